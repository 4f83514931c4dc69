/** The base map of the invented basin: outline, counties, rivers, towns and relief, on the plane and as GeoJSON. */
import { basinName, countyNames, riverNames, townNames } from '../names/placeNames.ts'
import { Random } from '../random/random.ts'
import type { Terrain } from '../terrain/makeTerrain.ts'
import { positionDeg } from './geoFrame.ts'
import { collection, type Feature, type FeatureCollection, multiPolygon } from './geojson.ts'
import { isInsideRing, type Point, ringArea } from './line.ts'
import { makeCounties } from './makeCounties.ts'
import { reliefFeatures } from './makeRelief.ts'
import { makeRivers, riverFeatures } from './makeRivers.ts'
import { makeTowns, type Town } from './makeTowns.ts'
import { BorderTracer } from './traceBorders.ts'

export interface ScenarioLayer {
  name: string
  kind: 'area' | 'river' | 'place' | 'relief' | 'outline'
  geojson: FeatureCollection
}

export interface BasinMap {
  towns: Town[]
  countyNames: readonly string[]
  /** Place in `countyNames` of the county around a point (m), -1 outside the basin. */
  countyAt: (xM: number, yM: number) => number
  /** In drawing order: relief, counties, rivers, outline, towns. */
  layers: ScenarioLayer[]
}

export function makeBasinMap(terrain: Terrain, seed: number): BasinMap {
  const towns = makeTowns(terrain, new Random(seed, 'towns'), townNames, countyNames.length)
  const countyOfCell = makeCounties(
    terrain,
    towns.slice(0, countyNames.length).map((town) => town.cell),
    new Random(seed, 'counties'),
  )
  const { columns, rows, cellM, originXM, originYM } = terrain.elevation
  const tracer = new BorderTracer({
    columns,
    rows,
    cellM,
    cornerXM: originXM - cellM / 2,
    cornerYM: originYM - cellM / 2,
    labels: countyOfCell,
  })
  const countyRings = countyNames.map((_, index) => tracer.rings((label) => label === index + 1))
  const counties = countyNames.map((name, index) => polygonFeature(name, countyRings[index]!))
  const outlineRings = tracer.rings((label) => label > 0)
  const outline = outlineRings.reduce((a, b) => (ringArea(a) >= ringArea(b) ? a : b))
  const rivers = makeRivers(terrain, riverNames)
  const places = towns.map((town): Feature => {
    const properties = { name: town.name, rank: town.rank }
    return { type: 'Feature', properties, geometry: { type: 'Point', coordinates: positionDeg(town.xM, town.yM) } }
  })
  const layers: ScenarioLayer[] = [
    layer('Relief', 'relief', reliefFeatures(terrain.elevation, outline, new Random(seed, 'relief'))),
    layer('Counties', 'area', counties),
    layer('Rivers', 'river', riverFeatures(rivers, terrain)),
    layer(basinName, 'outline', [polygonFeature(basinName, outlineRings)]),
    layer('Towns', 'place', places),
  ]
  const countyAt = (xM: number, yM: number) =>
    countyRings.findIndex((rings) => rings.filter((ring) => isInsideRing(xM, yM, ring)).length % 2 === 1)
  return { towns, countyNames, countyAt, layers }
}

function layer(name: string, kind: ScenarioLayer['kind'], features: Feature[]): ScenarioLayer {
  return { name, kind, geojson: collection(features) }
}

function polygonFeature(name: string, rings: readonly (readonly Point[])[]): Feature {
  return { type: 'Feature', properties: { name }, geometry: multiPolygon(rings) }
}
