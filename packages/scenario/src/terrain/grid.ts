/**
 * A regular grid on the basin's plane. Metres, x to the east, y to the north; the value of cell (column, row) holds at
 * its centre, row 0 is the southernmost.
 */
export interface Grid {
  columns: number
  rows: number
  cellM: number
  /** Centre of cell (0, 0). */
  originXM: number
  originYM: number
  values: Float64Array
}

export function gridLike(grid: Grid): Grid {
  return { ...grid, values: new Float64Array(grid.columns * grid.rows) }
}

/** Value at a point by bilinear interpolation; points outside take the nearest edge. */
export function sampleGrid(grid: Grid, xM: number, yM: number): number {
  const column = Math.min(Math.max((xM - grid.originXM) / grid.cellM, 0), grid.columns - 1.000_001)
  const row = Math.min(Math.max((yM - grid.originYM) / grid.cellM, 0), grid.rows - 1.000_001)
  const left = Math.floor(column)
  const low = Math.floor(row)
  const u = column - left
  const v = row - low
  const at = low * grid.columns + left
  const values = grid.values
  const south = values[at]! * (1 - u) + values[at + 1]! * u
  const north = values[at + grid.columns]! * (1 - u) + values[at + grid.columns + 1]! * u
  return south * (1 - v) + north * v
}

export function cellAt(grid: Grid, xM: number, yM: number): number {
  const column = Math.min(Math.max(Math.round((xM - grid.originXM) / grid.cellM), 0), grid.columns - 1)
  const row = Math.min(Math.max(Math.round((yM - grid.originYM) / grid.cellM), 0), grid.rows - 1)
  return row * grid.columns + column
}

export function cellX(grid: Grid, cell: number): number {
  return grid.originXM + (cell % grid.columns) * grid.cellM
}

export function cellY(grid: Grid, cell: number): number {
  return grid.originYM + Math.floor(cell / grid.columns) * grid.cellM
}

/** One pass of a 3 × 3 binomial mean over the inner cells, `passes` times; a new grid. */
export function smoothGrid(grid: Grid, passes: number): Grid {
  let from = grid.values
  for (let pass = 0; pass < passes; pass++) {
    const to = from.slice()
    for (let row = 1; row < grid.rows - 1; row++) {
      for (let column = 1; column < grid.columns - 1; column++) {
        const at = row * grid.columns + column
        const up = at + grid.columns
        const down = at - grid.columns
        to[at] =
          (4 * from[at]! +
            2 * (from[at - 1]! + from[at + 1]! + from[up]! + from[down]!) +
            from[up - 1]! +
            from[up + 1]! +
            from[down - 1]! +
            from[down + 1]!) /
          16
      }
    }
    from = to
  }
  return { ...grid, values: from === grid.values ? from.slice() : from }
}
