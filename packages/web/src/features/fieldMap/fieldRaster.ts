/**
 * The field as classed pixels. Values are taken bilinearly between cell centres, and cells outside the outline borrow the
 * mean of their neighbours, so that classes end at the outline and not one cell before it. Pure; mm in, RGBA out.
 */
import type { ClassScale } from './classScale.ts'

export type FieldGrid = { columns: number; rows: number; values: readonly (number | null)[] }

/** A copy without gaps near the known cells: each pass gives every gap the mean of its known neighbours. NaN stays beyond. */
export function filledOutward(grid: FieldGrid, passes = 3): Float64Array {
  let now = Float64Array.from(grid.values, (mm) => mm ?? Number.NaN)
  for (let pass = 0; pass < passes; pass += 1) {
    const next = now.slice()
    for (let row = 0; row < grid.rows; row += 1)
      for (let column = 0; column < grid.columns; column += 1) {
        const at = row * grid.columns + column
        if (!Number.isNaN(now[at]!)) continue
        let sum = 0
        let known = 0
        for (let dr = -1; dr <= 1; dr += 1)
          for (let dc = -1; dc <= 1; dc += 1) {
            const r = row + dr
            const c = column + dc
            if (r < 0 || c < 0 || r >= grid.rows || c >= grid.columns) continue
            const mm = now[r * grid.columns + c]!
            if (Number.isNaN(mm)) continue
            sum += mm
            known += 1
          }
        if (known > 0) next[at] = sum / known
      }
    now = next
  }
  return now
}

/** Bilinear value at a column and row position in cells (0.5 = centre of the first); NaN where a corner is missing. */
export function valueAt(filled: Float64Array, columns: number, rows: number, column: number, row: number): number {
  const x = Math.min(columns - 1, Math.max(0, column - 0.5))
  const y = Math.min(rows - 1, Math.max(0, row - 0.5))
  const c0 = Math.floor(x)
  const r0 = Math.floor(y)
  const c1 = Math.min(columns - 1, c0 + 1)
  const r1 = Math.min(rows - 1, r0 + 1)
  const tx = x - c0
  const ty = y - r0
  const top = filled[r0 * columns + c0]! * (1 - tx) + filled[r0 * columns + c1]! * tx
  const bottom = filled[r1 * columns + c0]! * (1 - tx) + filled[r1 * columns + c1]! * tx
  return top * (1 - ty) + bottom * ty
}

/**
 * Pixels of the grid, row 0 in the north.
 * @param rowOfPixel row position in cells of each pixel row: the map's projection decides how latitudes are spread
 */
export function classedPixels(
  grid: FieldGrid,
  scale: ClassScale,
  widthPx: number,
  rowOfPixel: Float64Array,
  alpha: number,
): Uint8ClampedArray<ArrayBuffer> {
  const filled = filledOutward(grid)
  const pixels = new Uint8ClampedArray(widthPx * rowOfPixel.length * 4)
  for (let y = 0; y < rowOfPixel.length; y += 1)
    for (let x = 0; x < widthPx; x += 1) {
      const mm = valueAt(filled, grid.columns, grid.rows, ((x + 0.5) / widthPx) * grid.columns, rowOfPixel[y]!)
      const colour = Number.isNaN(mm) ? undefined : scale.colours[scale.classOf(mm)]
      if (!colour) continue
      const at = (y * widthPx + x) * 4
      pixels[at] = colour[0]
      pixels[at + 1] = colour[1]
      pixels[at + 2] = colour[2]
      pixels[at + 3] = alpha
    }
  return pixels
}
