import { describe, expect, it } from 'vitest'
import { degreeGrid, metricGrid } from './fieldGrid.ts'
import { isohyetLevels } from './isohyetLevels.ts'
import { isohyets } from './isohyets.ts'

const frame = { columns: 40, rows: 30, west: -104, south: 38, east: -100, north: 41 }

describe('isohyets', () => {
  it('lie where a slope crosses the level, and end at the edge of the grid', () => {
    // Amount = 10 (lon + 104): the 13 mm line stands at -102.7.
    const values = Float64Array.from({ length: 1200 }, (_, i) => 10 * ((i % 40) + 0.5) * 0.1)
    const [line] = isohyets(values, frame, [13, 99])
    expect(isohyets(values, frame, [13, 99])).toHaveLength(1)
    expect(line!.levelMm).toBe(13)
    expect(line!.lines).toHaveLength(1)
    for (const [lon] of line!.lines[0]!) expect(lon).toBeCloseTo(-102.7, 9)
    const lats = line!.lines[0]!.map(([, lat]) => lat)
    expect(Math.max(...lats)).toBeCloseTo(40.95, 9)
    expect(Math.min(...lats)).toBeCloseTo(38.05, 9)
  })

  it('close around a hill, whose polygon runs counter-clockwise and holds its top', () => {
    const values = Float64Array.from({ length: 1200 }, (_, i) => {
      return 30 - Math.hypot((i % 40) - 22.3, Math.floor(i / 40) - 12.6)
    })
    const [ring] = isohyets(values, frame, [24])
    const line = ring!.lines[0]!
    expect(line[0]).toEqual(line[line.length - 1])
    const outer = ring!.polygons[0]![0]!
    let area = 0
    for (let k = 1; k < outer.length; k++) area += outer[k - 1]![0] * outer[k]![1] - outer[k]![0] * outer[k - 1]![1]
    expect(area / 2).toBeCloseTo(Math.PI * 36 * 0.01, 1)
    expect(area).toBeGreaterThan(0)
  })

  it('stop at cells without a value', () => {
    const values = Float64Array.from({ length: 1200 }, (_, i) =>
      Math.floor(i / 40) < 10 ? Number.NaN : 10 * ((i % 40) + 0.5) * 0.1,
    )
    const [line] = isohyets(values, frame, [13])
    for (const [lon, lat] of line!.lines.flat()) {
      expect(lon).toBeCloseTo(-102.7, 9)
      expect(lat).toBeLessThanOrEqual(39.96)
    }
  })
})

describe('isohyetLevels', () => {
  it.each([
    [37, 'mm', [1, 5, 10, 15, 20, 25, 30, 35]],
    [3.2, 'mm', [0.5, 1, 1.5, 2, 2.5, 3]],
    [140, 'mm', [1, 20, 40, 60, 80, 100, 120, 140]],
    [0.3, 'mm', []],
  ] as const)('up to %d %s', (largest, unit, levels) => {
    expect(isohyetLevels(largest, unit)).toEqual([...levels])
  })

  it('are round in inches when the network reads inches', () => {
    expect(isohyetLevels(37, 'in').map((mm) => Number((mm / 25.4).toFixed(6)))).toEqual([
      0.05, 0.2, 0.4, 0.6, 0.8, 1, 1.2, 1.4,
    ])
  })

  it('are never more than nine', () => {
    for (let largest = 0.5; largest < 2000; largest *= 1.07)
      for (const unit of ['mm', 'in'] as const) {
        const levels = isohyetLevels(largest, unit)
        expect(levels.length).toBeLessThanOrEqual(9)
        expect(levels.every((level) => level <= largest * (1 + 1e-9))).toBe(true)
      }
  })
})

describe('grids', () => {
  it('start in the north-west, middle of the first cell', () => {
    const grid = metricGrid({ columns: 4, rows: 2, west: 0, south: 0, east: 400, north: 100 })
    expect([grid.xM[0], grid.yM[0]]).toEqual([50, 75])
    expect([grid.xM[7], grid.yM[7]]).toEqual([350, 25])
  })

  it('in degrees lie on the gauges’ plane', () => {
    const grid = degreeGrid({ ...frame, columns: 2, rows: 2 }, { centreLatDeg: 39.5, centreLonDeg: -102 })
    expect(grid.xM[1]).toBeGreaterThan(80_000)
    expect(grid.xM[0]).toBeCloseTo(-grid.xM[1]!, 6)
    expect(grid.yM[0]).toBeGreaterThan(80_000)
    expect(grid.yM[2]).toBeLessThan(-80_000)
  })
})
