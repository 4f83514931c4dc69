import { describe, expect, it } from 'vitest'
import { boundsOf, isInside, pointsInside, ringsFromGeoJson } from './rings.ts'

const withHole = ringsFromGeoJson(
  {
    type: 'MultiPolygon',
    coordinates: [
      [
        [
          [0, 0],
          [10, 0],
          [10, 6],
          [0, 6],
          [0, 0],
        ],
        [
          [2, 2],
          [4, 2],
          [4, 5],
          [2, 5],
          [2, 2],
        ],
      ],
      [
        [
          [20, 0],
          [23, 0],
          [20, 3],
          [20, 0],
        ],
      ],
    ],
  },
  (lonDeg, latDeg) => ({ xM: 100 * lonDeg, yM: 10 * latDeg }),
)

describe('rings', () => {
  it('a hole is outside, a second part inside', () => {
    expect(isInside(withHole, 100, 30)).toBe(true)
    expect(isInside(withHole, 300, 30)).toBe(false)
    expect(isInside(withHole, 2050, 10)).toBe(true)
    expect(isInside(withHole, 1500, 10)).toBe(false)
    expect(boundsOf(withHole)).toEqual({ west: 0, south: 0, east: 2300, north: 60 })
  })

  it('pointsInside spreads enough points, all inside, in proportion to the area', () => {
    const points = pointsInside(withHole, 200)
    expect(points.length).toBeGreaterThanOrEqual(400)
    let inSecond = 0
    for (let k = 0; k < points.length; k += 2) {
      expect(isInside(withHole, points[k]!, points[k + 1]!)).toBe(true)
      if (points[k]! > 1500) inSecond++
    }
    expect(inSecond / (points.length / 2)).toBeCloseTo(4.5 / 58.5, 1)
  })

  it('an area without width still gives a point', () => {
    expect([...pointsInside([Float64Array.of(1, 2, 3, 2)], 5)]).toEqual([2, 2])
  })
})
