import { describe, expect, it } from 'vitest'
import { drainInPlace } from './drainage.ts'
import type { Grid } from './grid.ts'

function gridOf(rows: number[][]): Grid {
  const values = Float64Array.from(rows.flat())
  return { columns: rows[0]!.length, rows: rows.length, cellM: 1000, originXM: 0, originYM: 0, values }
}

describe('drainInPlace', () => {
  it('a tilted plane drains to its low side and every cell upstream is counted once', () => {
    const grid = gridOf([
      [9, 7, 5, 3],
      [9.1, 7.1, 5.1, 3.1],
      [9.2, 7.2, 5.2, 3.2],
    ])
    const { receiver, upstreamCells } = drainInPlace(grid)
    expect(receiver[5]).toBe(6) // 7.1 falls by 2 to the east, by 2.1 over √2 to the south-east
    expect(receiver[6]).toBe(7)
    expect(upstreamCells[7]).toBe(3)
  })

  it('a hollow is filled just enough to drain, and no cell is left without a way to the rim', () => {
    const grid = gridOf([
      [8, 8, 8, 8, 8],
      [8, 2, 3, 6, 4],
      [8, 5, 1, 7, 8],
      [8, 8, 8, 8, 8],
    ])
    const { receiver } = drainInPlace(grid)
    for (let cell = 0; cell < receiver.length; cell++) {
      let at = cell
      for (let step = 0; step < receiver.length && receiver[at] !== at; step++) at = receiver[at]!
      expect(receiver[at]).toBe(at)
    }
    expect(grid.values[12]).toBeGreaterThanOrEqual(6) // the hollow's lowest cell, raised to the sill at 6
    expect(grid.values[12]).toBeLessThan(6.01)
  })

  it('receivers come before the cells that drain to them', () => {
    const grid = gridOf(
      Array.from({ length: 9 }, (_, row) =>
        Array.from({ length: 11 }, (_, column) => Math.sin(row * 2.3 + column * 1.7) * 5),
      ),
    )
    const { receiver, order } = drainInPlace(grid)
    const place = new Int32Array(order.length)
    order.forEach((cell, index) => {
      place[cell] = index
    })
    for (let cell = 0; cell < receiver.length; cell++) {
      if (receiver[cell] !== cell) expect(place[receiver[cell]!]).toBeLessThan(place[cell]!)
    }
  })
})
