/**
 * Where the gauges stand: as people live, most in and around towns, the rest on farms along the valleys, a few at huts
 * and passes. Heights come from the terrain.
 */
import type { BasinMap } from '../map/makeBasinMap.ts'
import { type Town, townAppeal } from '../map/makeTowns.ts'
import { hamletRoots, hamletWords, townSpots } from '../names/placeNames.ts'
import type { Random } from '../random/random.ts'
import { cellX, cellY, sampleGrid } from '../terrain/grid.ts'
import type { Terrain } from '../terrain/makeTerrain.ts'
import type { Sites } from '../weather/sites.ts'

export interface PlacedGauges extends Sites {
  names: string[]
}

const TOWN_WEIGHT = [0, 6, 2.8, 1.7, 1] as const
const SPACING_M = 1900
const TOWN_SHARE = 0.46
const HIGH_SHARE = 0.06
const HIGH_M = 900
const BY_RIVER_KM2 = 60

export function placeGauges(
  terrain: Terrain,
  map: Pick<BasinMap, 'towns' | 'countyAt'>,
  count: number,
  random: Random,
): PlacedGauges {
  const placed: PlacedGauges = {
    count: 0,
    xM: new Float64Array(count),
    yM: new Float64Array(count),
    elevationM: new Float64Array(count),
    names: [],
  }
  const names = new Namer(random)
  const appeal = townAppeal(terrain).map((value) => value ** 0.45)
  const { elevation } = terrain
  const high = appeal.map((value, cell) => (value > 0 && elevation.values[cell]! > HIGH_M ? 1 : 0))
  const { towns } = map
  const weights = towns.map((town) => TOWN_WEIGHT[town.rank]!)
  const tryAt = (xM: number, yM: number, spacingM: number, name: () => string) => {
    if (map.countyAt(xM, yM) === -1) return
    for (let other = 0; other < placed.count; other++) {
      if (Math.hypot(placed.xM[other]! - xM, placed.yM[other]! - yM) < spacingM) return
    }
    placed.xM[placed.count] = xM
    placed.yM[placed.count] = yM
    placed.elevationM[placed.count] = Math.round(sampleGrid(elevation, xM, yM) + 6 * random.normal())
    placed.names.push(name())
    placed.count++
  }
  for (let attempt = 0; placed.count < count; attempt++) {
    const spacingM = SPACING_M * 0.998 ** Math.max(0, attempt - 4 * count)
    if (random.chance(TOWN_SHARE)) {
      const town = towns[random.weighted(weights)]!
      const awayM = Math.min(random.logNormal(town.rank <= 2 ? 2600 : 1300, 0.6), 6500)
      const bearing = random.between(0, 2 * Math.PI)
      tryAt(town.xM + awayM * Math.cos(bearing), town.yM + awayM * Math.sin(bearing), spacingM, () =>
        names.inTown(town),
      )
      continue
    }
    const isHigh = random.chance(HIGH_SHARE / (1 - TOWN_SHARE))
    const cell = random.weighted(isHigh ? high : appeal)
    const xM = cellX(elevation, cell) + random.between(-490, 490)
    const yM = cellY(elevation, cell) + random.between(-490, 490)
    const isByRiver = terrain.drainage.upstreamCells[cell]! > BY_RIVER_KM2
    tryAt(xM, yM, 2 * spacingM, () => names.inCountry(isHigh ? 'height' : isByRiver ? 'water' : 'land'))
  }
  return placed
}

/** Gives each gauge a name of its own. */
class Namer {
  private readonly used = new Set<string>()
  private readonly roots: string[]
  private readonly random: Random

  constructor(random: Random) {
    this.random = random
    this.roots = random.shuffled(hamletRoots)
  }

  inTown(town: Town): string {
    return this.fresh(() => `${town.name}, ${this.random.pick(townSpots)}`)
  }

  inCountry(kind: keyof typeof hamletWords): string {
    return this.fresh(
      () => `${this.roots.pop() ?? this.random.pick(hamletRoots)} ${this.random.pick(hamletWords[kind])}`,
    )
  }

  private fresh(make: () => string): string {
    let name = make()
    for (let attempt = 2; this.used.has(name); attempt++) {
      name = attempt < 40 ? make() : `${make()} ${attempt - 38}`
    }
    this.used.add(name)
    return name
  }
}
