/** Ragged areas of a labelled grid made smooth: a majority vote among neighbours, then one connected piece each. */

/**
 * @param labels  0 outside; areas 1…n
 */
export function cleanLabels(labels: Int32Array, columns: number, rows: number, votes: number): Int32Array {
  let from = labels
  for (let vote = 0; vote < votes; vote++) from = majority(from, columns, rows)
  return connect(from, columns, rows)
}

function majority(labels: Int32Array, columns: number, rows: number): Int32Array {
  const result = labels.slice()
  const counts = new Map<number, number>()
  for (let row = 1; row < rows - 1; row++) {
    for (let column = 1; column < columns - 1; column++) {
      const at = row * columns + column
      counts.clear()
      for (let up = -1; up <= 1; up++) {
        for (let right = -1; right <= 1; right++) {
          const label = labels[at + up * columns + right]!
          counts.set(label, (counts.get(label) ?? 0) + 1)
        }
      }
      if (counts.size === 1) continue
      let best = labels[at]!
      for (const [label, count] of counts) if (count > (counts.get(best) ?? 0)) best = label
      result[at] = best
    }
  }
  return result
}

/** Keep the largest piece of each label (pieces join by edges); smaller pieces go to the neighbour they touch first. */
function connect(labels: Int32Array, columns: number, rows: number): Int32Array {
  const piece = new Int32Array(labels.length).fill(-1)
  const sizes: number[] = []
  const largest = new Map<number, number>()
  for (let start = 0; start < labels.length; start++) {
    if (piece[start] !== -1) continue
    const id = sizes.length
    const cells = flood(labels, piece, start, id, columns, rows)
    sizes.push(cells)
    const label = labels[start]!
    const best = largest.get(label)
    if (best === undefined || cells > sizes[best]!) largest.set(label, id)
  }
  const result = labels.slice()
  for (let cell = 0; cell < labels.length; cell++) {
    const isKept = largest.get(labels[cell]!) === piece[cell]
    if (!isKept) result[cell] = -1
  }
  for (let changed = true; changed; ) {
    changed = false
    for (let cell = 0; cell < result.length; cell++) {
      if (result[cell] !== -1) continue
      const near = edgeNeighbours(cell, columns, rows).find((next) => result[next] !== -1)
      if (near === undefined) continue
      result[cell] = result[near]!
      changed = true
    }
  }
  return result
}

function flood(
  labels: Int32Array,
  piece: Int32Array,
  start: number,
  id: number,
  columns: number,
  rows: number,
): number {
  const open = [start]
  piece[start] = id
  let cells = 0
  for (let cell = open.pop(); cell !== undefined; cell = open.pop()) {
    cells++
    for (const next of edgeNeighbours(cell, columns, rows)) {
      if (piece[next] !== -1 || labels[next] !== labels[start]) continue
      piece[next] = id
      open.push(next)
    }
  }
  return cells
}

/** Cells that share an edge with this one. */
export function edgeNeighbours(cell: number, columns: number, rows: number): number[] {
  const column = cell % columns
  const row = (cell - column) / columns
  const result: number[] = []
  if (column > 0) result.push(cell - 1)
  if (column < columns - 1) result.push(cell + 1)
  if (row > 0) result.push(cell - columns)
  if (row < rows - 1) result.push(cell + columns)
  return result
}
