import { describe, expect, it } from 'vitest'
import type { Grid } from '../terrain/grid.ts'
import { contourRings } from './contourRings.ts'
import { ringArea } from './line.ts'

function cone(heightAt: (x: number, y: number) => number): Grid {
  const columns = 61
  const rows = 41
  const values = Float64Array.from({ length: columns * rows }, (_, cell) => {
    const column = cell % columns
    return heightAt(column - 30, (cell - column) / columns - 20)
  })
  return { columns, rows, cellM: 100, originXM: -3000, originYM: -2000, values }
}

describe('contourRings', () => {
  it('a cone gives one counter-clockwise ring with the area of its circle', () => {
    const rings = contourRings(cone((x, y) => 12.4 - Math.hypot(x, y)))
    expect(rings).toHaveLength(1)
    expect(ringArea(rings[0]!) / 1e4).toBeCloseTo(Math.PI * 12.4 ** 2, -1)
  })

  it('a crater gives an outer ring counter-clockwise and an inner one clockwise, both closed', () => {
    const rings = contourRings(cone((x, y) => 4.3 - Math.abs(Math.hypot(x, y) - 10)))
    const areas = rings.map((ring) => ringArea(ring) / 1e4).sort((a, b) => a - b)
    expect(areas).toHaveLength(2)
    expect(areas[0]).toBeCloseTo(-Math.PI * 5.7 ** 2, -1)
    expect(areas[1]).toBeCloseTo(Math.PI * 14.3 ** 2, -1)
    for (const ring of rings) expect(ring[0]).toEqual(ring.at(-1))
  })

  it('saddles close their rings whichever way the middle lies', () => {
    for (const shift of [-0.2, 0.2]) {
      const rings = contourRings(
        cone((x, y) => (Math.abs(x) > 24 || Math.abs(y) > 14 ? -1 : Math.sin(x * 1.3) * Math.sin(y * 1.1) + shift)),
      )
      expect(rings.length).toBeGreaterThan(1)
      for (const ring of rings) expect(ring[0]).toEqual(ring.at(-1))
    }
  })
})
