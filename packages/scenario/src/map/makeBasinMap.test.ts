import { describe, expect, it } from 'vitest'
import { countyNames, townNames } from '../names/placeNames.ts'
import { Random } from '../random/random.ts'
import { makeTerrain } from '../terrain/makeTerrain.ts'
import type { Position } from './geoFrame.ts'
import type { Feature } from './geojson.ts'
import { isInsideRing, ringArea } from './line.ts'
import { makeBasinMap } from './makeBasinMap.ts'

const seed = 4
const terrain = makeTerrain(new Random(seed, 'terrain'))
const map = makeBasinMap(terrain, seed)
const featuresOf = (kind: string) => map.layers.find((layer) => layer.kind === kind)!.geojson.features
const polygons = (feature: Feature) => (feature.geometry.type === 'MultiPolygon' ? feature.geometry.coordinates : [])
const areaOf = (feature: Feature) =>
  polygons(feature)
    .flat()
    .reduce((sum, ring) => sum + ringArea(ring), 0)
const outerRing = (feature: Feature) => polygons(feature)[0]![0]!

describe('makeTerrain', () => {
  it('the basin measures about 180 by 130 km and rises from its outlet to peaks above 1800 m', () => {
    const { columns, values } = terrain.elevation
    const cells = [...terrain.inBasin.keys()].filter((cell) => terrain.inBasin[cell] === 1)
    const xs = cells.map((cell) => cell % columns)
    const ys = cells.map((cell) => Math.floor(cell / columns))
    const span = (list: number[]) => Math.max(...list) - Math.min(...list)
    expect(span(xs)).toBeGreaterThan(150)
    expect(span(xs)).toBeLessThan(200)
    expect(span(ys)).toBeGreaterThan(105)
    expect(span(ys)).toBeLessThan(148)
    const heights = cells.map((cell) => values[cell]!)
    expect(Math.max(...heights)).toBeCloseTo(1840, -1)
    expect(Math.min(...heights)).toBe(values[terrain.outletCell]!)
  })

  it('all water of the basin leaves through the outlet', () => {
    const { receiver, upstreamCells } = terrain.drainage
    let cells = 0
    for (let cell = 0; cell < receiver.length; cell++) {
      if (terrain.inBasin[cell] !== 1) continue
      cells++
      if (cell !== terrain.outletCell) expect(terrain.inBasin[receiver[cell]!]).toBe(1)
    }
    expect(upstreamCells[terrain.outletCell]).toBe(cells)
  })
})

describe('makeBasinMap', () => {
  it('rings are closed, have at least four positions, and run as RFC 7946 asks', () => {
    for (const layer of map.layers) {
      for (const feature of layer.geojson.features) {
        for (const polygon of polygons(feature)) {
          polygon.forEach((ring, index) => {
            expect(ring.length).toBeGreaterThanOrEqual(4)
            expect(ring[0]).toEqual(ring.at(-1))
            expect(Math.sign(ringArea(ring))).toBe(index === 0 ? 1 : -1)
          })
        }
      }
    }
  })

  it('positions are longitudes and latitudes of the basin, and JSON keeps every layer as it is', () => {
    const everyPosition = map.layers.flatMap((layer) =>
      layer.geojson.features.flatMap((feature) => (feature.geometry.coordinates as unknown[]).flat(3) as number[]),
    )
    const isLongitude = (value: number) => value > -35 && value < -32
    const isLatitude = (value: number) => value > 43 && value < 45.5
    expect(everyPosition.every((value) => isLongitude(value) || isLatitude(value))).toBe(true)
    expect(JSON.parse(JSON.stringify(map.layers))).toEqual(map.layers)
  })

  it('the counties tile the basin: areas add up to the outline, and every shared edge is shared twice', () => {
    const counties = featuresOf('area')
    const outline = featuresOf('outline')[0]!
    expect(counties.map((county) => county.properties.name).sort()).toEqual([...countyNames].sort())
    const sum = counties.reduce((total, county) => total + areaOf(county), 0)
    expect(sum).toBeCloseTo(areaOf(outline), 8)
    const uses = new Map<string, number>()
    const count = (ring: Position[], sign: number) => {
      for (let index = 1; index < ring.length; index++) {
        const from = ring[index - 1]!.join()
        const to = ring[index]!.join()
        const key = from < to ? `${from} ${to}` : `${to} ${from}`
        uses.set(key, (uses.get(key) ?? 0) + (from < to ? sign : -sign))
      }
    }
    for (const county of counties) for (const ring of polygons(county).flat()) count(ring, 1)
    for (const ring of polygons(outline).flat()) count(ring, -1)
    expect([...uses.values()].every((balance) => balance === 0)).toBe(true)
  })

  it('no county’s border crosses itself', () => {
    for (const county of featuresOf('area')) expect(crossings(outerRing(county)), county.properties.name).toBe(0)
  })

  it('each county is large enough to mean something: 3 % of the basin or more', () => {
    const whole = areaOf(featuresOf('outline')[0]!)
    for (const county of featuresOf('area'))
      expect(areaOf(county) / whole, county.properties.name).toBeGreaterThan(0.03)
  })

  it('towns have names of their own and lie in the basin; every county has a county town', () => {
    const towns = featuresOf('place')
    expect(new Set(towns.map((town) => town.properties.name)).size).toBe(townNames.length)
    const seats = map.towns.filter((town) => town.rank <= 2).map((town) => map.countyAt(town.xM, town.yM))
    expect(new Set(seats).size).toBe(countyNames.length)
    expect(seats).not.toContain(-1)
  })

  it('relief bands go up step by step and lie inside the outline', () => {
    const bands = featuresOf('relief')
    const levels = bands.map((band) => band.properties.elevationM!)
    expect(levels).toEqual([...levels].sort((a, b) => a - b))
    expect(levels.length).toBeGreaterThanOrEqual(8)
    const areas = bands.map(areaOf)
    for (let index = 1; index < areas.length; index++) expect(areas[index]).toBeLessThan(areas[index - 1]!)
  })

  it('rivers end where they join another, or at the outlet', () => {
    const ends = new Set<string>()
    const points = new Set<string>()
    for (const river of featuresOf('river')) {
      if (river.geometry.type !== 'MultiLineString') throw new Error('a river is a line')
      for (const line of river.geometry.coordinates) {
        ends.add(line.at(-1)!.join())
        for (const position of line) points.add(position.join())
      }
    }
    expect(points.size).toBeGreaterThan(500)
    expect(ends.size).toBeGreaterThan(40)
    const outline = outerRing(featuresOf('outline')[0]!)
    const outside = [...points].filter((text) => {
      const [lon, lat] = text.split(',').map(Number)
      return !isInsideRing(lon!, lat!, outline)
    })
    expect(outside.length / points.size).toBeLessThan(0.01)
  })
})

/** Pairs of segments of a ring that cross. */
function crossings(ring: Position[]): number {
  const side = (a: Position, b: Position, c: Position) =>
    Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]))
  let found = 0
  for (let i = 1; i < ring.length; i++) {
    for (let j = i + 2; j < ring.length; j++) {
      if (i === 1 && j === ring.length - 1) continue
      const [a, b, c, d] = [ring[i - 1]!, ring[i]!, ring[j - 1]!, ring[j]!]
      if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) found++
    }
  }
  return found
}
