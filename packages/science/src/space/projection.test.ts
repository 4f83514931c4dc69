import { describe, expect, it } from 'vitest'
import { seededRandom } from '../stats/seededRandom.ts'
import { distanceM } from './distanceM.ts'
import { placeGauges } from './placeGauges.ts'
import { fromPlane, projectionFor, toPlane } from './projection.ts'

describe('projection', () => {
  it('distances between places within 500 km of the centre are right to 0.11 %, at any latitude', () => {
    const random = seededRandom(3)
    for (const centreLatDeg of [-62, -20, 0.5, 38, 67]) {
      const projection = { centreLatDeg, centreLonDeg: -104.3 }
      let worst = 0
      for (let k = 0; k < 300; k++) {
        const a = fromPlane(projection, (random() - 0.5) * 700_000, (random() - 0.5) * 700_000)
        const b = fromPlane(projection, (random() - 0.5) * 700_000, (random() - 0.5) * 700_000)
        const from = toPlane(projection, a.latDeg, a.lonDeg)
        const to = toPlane(projection, b.latDeg, b.lonDeg)
        const onPlane = Math.hypot(from.xM - to.xM, from.yM - to.yM)
        worst = Math.max(worst, Math.abs(onPlane / distanceM(a.latDeg, a.lonDeg, b.latDeg, b.lonDeg) - 1))
      }
      expect(worst).toBeLessThan(0.0011)
      expect(worst).toBeGreaterThan(0.0001)
    }
  })

  it('distances from the centre are exact', () => {
    const projection = { centreLatDeg: 41.2, centreLonDeg: 12.7 }
    const at = toPlane(projection, 44.9, 17.1)
    expect(Math.hypot(at.xM, at.yM)).toBeCloseTo(distanceM(41.2, 12.7, 44.9, 17.1), 3)
  })

  it('fromPlane undoes toPlane to a millimetre, across the 180th meridian too', () => {
    const projection = { centreLatDeg: -17.8, centreLonDeg: 179.4 }
    const back = fromPlane(projection, ...(Object.values(toPlane(projection, -16.2, -178.9)) as [number, number]))
    expect(back.latDeg).toBeCloseTo(-16.2, 8)
    expect(back.lonDeg).toBeCloseTo(-178.9, 8)
  })

  it('x grows to the east and y to the north', () => {
    const projection = { centreLatDeg: 40, centreLonDeg: -100 }
    expect(toPlane(projection, 40.1, -100).yM).toBeCloseTo(11119.5, 0)
    expect(toPlane(projection, 40, -99.9).xM).toBeGreaterThan(8500)
  })
})

describe('placeGauges', () => {
  const rows = [
    { id: 'a', latDeg: 39.1, lonDeg: -179.6, elevationM: 1480 },
    { id: 'b', latDeg: 39.9, lonDeg: 179.2, elevationM: null },
    { id: 'c', latDeg: 40.4, lonDeg: -179.9, elevationM: 2210 },
  ]

  it('keeps distances whatever side of the 180th meridian the gauges lie on', () => {
    const set = placeGauges(rows)
    const onPlane = Math.hypot(set.xM[0]! - set.xM[1]!, set.yM[0]! - set.yM[1]!)
    expect(onPlane / distanceM(39.1, -179.6, 39.9, 179.2)).toBeCloseTo(1, 3)
    expect(set.ids).toEqual(['a', 'b', 'c'])
    expect(set.elevationM[1]).toBeNaN()
    expect(set.elevationM[2]).toBe(2210)
  })

  it('puts points on the gauges’ plane when given their projection', () => {
    const shared = placeGauges([rows[1]!], projectionFor(rows))
    expect(shared.xM[0]).toBe(placeGauges(rows).xM[1])
  })

  it('takes rows that are on a plane as they are', () => {
    const set = placeGauges([
      { id: 'p', xM: 120.5, yM: -7, elevationM: null },
      { id: 'q', xM: 3, yM: 99.25, elevationM: 12 },
    ])
    expect([...set.xM]).toEqual([120.5, 3])
    expect([...set.yM]).toEqual([-7, 99.25])
  })
})
