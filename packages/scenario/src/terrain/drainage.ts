/**
 * Where water runs on a grid: hollows are filled from the rim inward, then every cell drains to its steepest lower
 * neighbour of eight. Source: priority flood [Barnes2014]; steepest descent [OCallaghan1984].
 */
import type { Grid } from './grid.ts'

export interface Drainage {
  /** Cell that each cell drains to; cells on the grid's rim drain to themselves. */
  receiver: Int32Array
  /** All cells, every receiver before those that drain to it. */
  order: Int32Array
  /** Cells drained through each cell, itself included. */
  upstreamCells: Float64Array
}

/** @param grid elevations in m; hollows are raised in place by millimetres so that each cell has a way out */
export function drainInPlace(grid: Grid): Drainage {
  const { columns, rows, values } = grid
  const count = columns * rows
  const receiver = new Int32Array(count).fill(-1)
  const order = new Int32Array(count)
  const seen = new Uint8Array(count)
  const heap = new CellHeap(values, count)
  for (let cell = 0; cell < count; cell++) {
    const column = cell % columns
    const row = (cell - column) / columns
    if (column !== 0 && row !== 0 && column !== columns - 1 && row !== rows - 1) continue
    seen[cell] = 1
    receiver[cell] = cell
    heap.push(cell)
  }
  const steps = [-1, 1, -columns, columns, -columns - 1, -columns + 1, columns - 1, columns + 1]
  let placed = 0
  while (heap.size > 0) {
    const cell = heap.pop()
    order[placed++] = cell
    const column = cell % columns
    for (const step of steps) {
      const next = cell + step
      const nextColumn = next % columns
      if (next < 0 || next >= count || Math.abs(nextColumn - column) > 1) continue
      if (seen[next] === 1) continue
      seen[next] = 1
      if (values[next]! <= values[cell]!) values[next] = values[cell]! + 0.001
      heap.push(next)
    }
  }
  for (const cell of order) if (receiver[cell] === -1) receiver[cell] = steepest(values, cell, steps)
  const upstreamCells = new Float64Array(count).fill(1)
  for (let index = count - 1; index >= 0; index--) {
    const cell = order[index]!
    const to = receiver[cell]!
    if (to !== cell) upstreamCells[to] = upstreamCells[to]! + upstreamCells[cell]!
  }
  return { receiver, order, upstreamCells }
}

function steepest(values: Float64Array, cell: number, steps: readonly number[]): number {
  let best = cell
  let bestSlope = 0
  for (let index = 0; index < 8; index++) {
    const next = cell + steps[index]!
    const slope = (values[cell]! - values[next]!) / (index < 4 ? 1 : Math.SQRT2)
    if (slope > bestSlope) {
      bestSlope = slope
      best = next
    }
  }
  return best
}

/** Binary heap of cells, the lowest first; ties go to the lower cell number, so the order never depends on chance. */
class CellHeap {
  size = 0
  private readonly cells: Int32Array
  private readonly values: Float64Array

  constructor(values: Float64Array, capacity: number) {
    this.values = values
    this.cells = new Int32Array(capacity)
  }

  push(cell: number): void {
    let at = this.size++
    while (at > 0) {
      const parent = (at - 1) >> 1
      if (!this.isBefore(cell, this.cells[parent]!)) break
      this.cells[at] = this.cells[parent]!
      at = parent
    }
    this.cells[at] = cell
  }

  pop(): number {
    const top = this.cells[0]!
    const last = this.cells[--this.size]!
    let at = 0
    for (;;) {
      let child = 2 * at + 1
      if (child >= this.size) break
      if (child + 1 < this.size && this.isBefore(this.cells[child + 1]!, this.cells[child]!)) child++
      if (!this.isBefore(this.cells[child]!, last)) break
      this.cells[at] = this.cells[child]!
      at = child
    }
    this.cells[at] = last
    return top
  }

  private isBefore(a: number, b: number): boolean {
    const difference = this.values[a]! - this.values[b]!
    return difference < 0 || (difference === 0 && a < b)
  }
}
