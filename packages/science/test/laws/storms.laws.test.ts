/** What must hold of storms and their tracks whatever the reports. */
import { describe, expect, it } from 'vitest'
import { fromPlane } from '../../src/space/projection.ts'
import { normalDeviates, seededRandom } from '../../src/stats/seededRandom.ts'
import { clusterReports, isLinked, type PlacedReport } from '../../src/urgent/clusterReports.ts'
import { stormTrack } from '../../src/urgent/stormTrack.ts'

const startMs = 1_813_075_200_000
const centre = { centreLatDeg: 44, centreLonDeg: 8 }

function report(xKm: number, yKm: number, minutes: number, kind: PlacedReport['kind'] = 'hail'): PlacedReport {
  return { kind, ...fromPlane(centre, 1000 * xKm, 1000 * yKm), seenAtMs: startMs + 60_000 * minutes }
}

/** Reports of a storm that moves with u, v km/h, scattered about its centre. */
function stormOf(u: number, v: number, count: number, scatterKm: number, random: () => number): PlacedReport[] {
  const deviate = normalDeviates(random)
  return Array.from({ length: count }, (_, index) => {
    const minutes = (60 * (index + random())) / count
    const x = (u * minutes) / 60 + scatterKm * deviate()
    const y = (v * minutes) / 60 + scatterKm * deviate()
    return report(x, y, minutes)
  })
}

describe('clusters', () => {
  const random = seededRandom(51)
  const reports = Array.from({ length: 160 }, (_, index) =>
    report(300 * random(), 300 * random(), 240 * random(), index % 9 === 0 ? 'snow' : 'wind'),
  )
  const storms = clusterReports(reports)

  it('are the connected parts of the links, found again by plain search', () => {
    const found = new Array<number>(reports.length).fill(-1)
    let next = 0
    for (const first of reports.keys()) {
      if (found[first] !== -1) continue
      const open = [first]
      found[first] = next
      while (open.length > 0) {
        const at = open.pop() as number
        for (const other of reports.keys()) {
          if (found[other] !== -1 || !isLinked(reports[at]!, reports[other]!)) continue
          found[other] = next
          open.push(other)
        }
      }
      next++
    }
    for (const one of reports.keys()) {
      for (const other of reports.keys()) {
        expect(storms[one] === storms[other]).toBe(found[one] === found[other])
      }
    }
    expect(next).toBeGreaterThan(10)
    expect(next).toBeLessThan(150)
  })

  it('do not depend on the order of the reports', () => {
    const order = reports.map((_, index) => index).sort((one, other) => ((one * 37) % 160) - ((other * 37) % 160))
    const again = clusterReports(order.map((index) => reports[index]!))
    for (const [position, index] of order.entries()) expect(again[position]).toBe(storms[index])
  })

  it('a storm may travel far in short steps; two at once far apart are two', () => {
    const long = Array.from({ length: 12 }, (_, step) => report(15 * step, 0, 15 * step))
    expect(new Set(clusterReports(long)).size).toBe(1)
    expect(clusterReports([report(0, 0, 0), report(60, 0, 0)])).toEqual([0, 1])
    expect(clusterReports([])).toEqual([])
  })
})

describe('tracks', () => {
  it('without scatter the movement is found exactly: 48 km/h toward 53.13°', () => {
    const track = stormTrack([0, 15, 30, 45, 60].map((minutes) => report(0.64 * minutes, 0.48 * minutes, minutes)))
    expect(track?.speedKmPerH).toBeCloseTo(48, 1)
    // North at the middle of the reports is turned by up to a quarter of a degree against the centre of this map.
    expect(Math.abs(track!.towardDeg - 53.13)).toBeLessThan(0.25)
    expect(track!.speedLowKmPerH).toBeLessThan(48)
    expect(track!.speedHighKmPerH).toBeGreaterThan(48)
  })

  it('holds the true speed and direction about eight times in ten', () => {
    const random = seededRandom(7)
    let speeds = 0
    let directions = 0
    let told = 0
    for (let round = 0; round < 400; round++) {
      const speed = 30 + 40 * random()
      const toward = 360 * random()
      const [u, v] = [speed * Math.sin((toward * Math.PI) / 180), speed * Math.cos((toward * Math.PI) / 180)]
      const track = stormTrack(stormOf(u, v, 5 + Math.floor(8 * random()), 2 + 6 * random(), random))
      if (track === null) continue
      told++
      if (track.speedLowKmPerH <= speed && speed <= track.speedHighKmPerH) speeds++
      const off = Math.abs(((track.towardDeg - toward + 540) % 360) - 180)
      if (off <= track.towardPlusMinusDeg) directions++
    }
    expect(told).toBeGreaterThan(360)
    expect(speeds / told).toBeGreaterThan(0.74)
    expect(speeds / told).toBeLessThan(0.92)
    expect(directions / told).toBeGreaterThan(0.74)
    expect(directions / told).toBeLessThan(0.92)
  })

  it('turns with the map: a storm turned by 90° moves 90° further round', () => {
    const points = [0, 11, 25, 38, 60].map((minutes, index) => [0.9 * minutes + index, 2 * index, minutes] as const)
    const one = stormTrack(points.map(([x, y, minutes]) => report(x, y, minutes)))
    const turned = stormTrack(points.map(([x, y, minutes]) => report(y, -x, minutes)))
    expect(turned?.speedKmPerH).toBeCloseTo(one!.speedKmPerH, 1)
    expect(turned!.towardDeg - one!.towardDeg).toBeCloseTo(90, 0)
  })

  it('one report that is far off the line bends it little', () => {
    const line = Array.from({ length: 9 }, (_, step) => report(6 * step, 0, 8 * step))
    const track = stormTrack([...line, report(30, 60, 33)])
    expect(Math.abs(track!.towardDeg - 90)).toBeLessThan(6)
    expect(track!.speedKmPerH).toBeGreaterThan(41)
    expect(track!.speedKmPerH).toBeLessThan(49)
  })

  it('is none for two reports, for one instant, and for a storm that stands', () => {
    expect(stormTrack([report(0, 0, 0), report(20, 0, 20)])).toBeNull()
    expect(stormTrack([report(0, 0, 0), report(5, 0, 1), report(9, 0, 2)])).toBeNull()
    expect(stormTrack(stormOf(0, 0, 12, 5, seededRandom(3)))).toBeNull()
  })
})
