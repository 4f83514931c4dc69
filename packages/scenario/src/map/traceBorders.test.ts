import { describe, expect, it } from 'vitest'
import { cleanLabels } from './cleanLabels.ts'
import { ringArea } from './line.ts'
import { BorderTracer } from './traceBorders.ts'

// Four areas around an inner one (5), none alike.
const rows = [
  '000000000000',
  '011111122220',
  '011111122220',
  '011155222220',
  '033355522440',
  '033333554440',
  '033333344440',
  '033333444440',
  '000000000000',
]
const labels = Int32Array.from(rows.flatMap((row) => [...row].map(Number)))
const grid = { columns: 12, rows: 9, cellM: 1000, cornerXM: 200, cornerYM: -300, labels }

describe('BorderTracer', () => {
  it('areas share their borders exactly: their areas add up to that of the whole', () => {
    const tracer = new BorderTracer(grid)
    const parts = [1, 2, 3, 4, 5].map((label) => tracer.rings((value) => value === label))
    const whole = tracer.rings((value) => value > 0)
    const sum = parts.flat().reduce((total, ring) => total + ringArea(ring), 0)
    expect(whole).toHaveLength(1)
    expect(sum).toBeCloseTo(ringArea(whole[0]!), 4)
    for (const ring of parts.flat()) expect(ring[0]).toEqual(ring.at(-1))
  })

  it('an area with a hole gets a clockwise ring around the hole', () => {
    const around = new BorderTracer(grid).rings((value) => value > 0 && value !== 5)
    expect(around.map((ring) => Math.sign(ringArea(ring))).sort()).toEqual([-1, 1])
  })
})

describe('cleanLabels', () => {
  it('cells cut off from their area go to a neighbour, so that each area is one piece', () => {
    const ragged = Int32Array.from([...[1, 1, 1, 2, 2], ...[1, 2, 1, 2, 2], ...[1, 1, 1, 2, 1]])
    expect([...cleanLabels(ragged, 5, 3, 0)]).toEqual([1, 1, 1, 2, 2, 1, 1, 1, 2, 2, 1, 1, 1, 2, 2])
  })
})
