/**
 * Towns where people would settle: low, level ground by a river, denser along the main valley. The first towns are
 * county towns, one for each county, kept apart; villages fill in between.
 */
import type { Random } from '../random/random.ts'
import { cellX, cellY } from '../terrain/grid.ts'
import type { Terrain } from '../terrain/makeTerrain.ts'

export interface Town {
  name: string
  cell: number
  xM: number
  yM: number
  /** 1 = the chief town, 2 = other county towns, 3 = small towns, 4 = villages. */
  rank: number
}

const SEAT_SPACING_M = 25_000
const SPACING_M = [0, 0, 11_000, 7_500] as const

export function makeTowns(terrain: Terrain, random: Random, names: readonly string[], countyCount: number): Town[] {
  const appeal = townAppeal(terrain)
  const cells = appeal
    .map((value, cell) => ({ cell, value: value * random.logNormal(1, 0.35) }))
    .filter((entry) => entry.value > 0)
    .sort((a, b) => b.value - a.value || a.cell - b.cell)
  const towns: Town[] = []
  const settle = (count: number, rank: number, spacingM: number) => {
    for (const { cell } of cells) {
      if (towns.length >= count) return
      const xM = cellX(terrain.elevation, cell)
      const yM = cellY(terrain.elevation, cell)
      if (towns.some((town) => Math.hypot(town.xM - xM, town.yM - yM) < spacingM)) continue
      towns.push({ name: '', cell, xM: xM + random.between(-450, 450), yM: yM + random.between(-450, 450), rank })
    }
  }
  for (let spacingM = SEAT_SPACING_M; towns.length < countyCount; spacingM *= 0.9) settle(countyCount, 2, spacingM)
  settle(countyCount + Math.floor((names.length - countyCount) / 3), 3, SPACING_M[2])
  settle(names.length, 4, SPACING_M[3])
  towns[0]!.rank = 1
  towns.forEach((town, index) => {
    town.name = names[index]!
  })
  return towns
}

/** How inviting each cell of the basin is, 0 outside it. */
export function townAppeal(terrain: Terrain): number[] {
  const { columns, values } = terrain.elevation
  const upstream = terrain.drainage.upstreamCells
  return Array.from(values, (heightM, cell) => {
    if (!isDeepInside(terrain, cell)) return 0
    let riverKm2 = 0
    let steepM = 0
    for (let up = -1; up <= 1; up++) {
      for (let right = -1; right <= 1; right++) {
        const near = cell + up * columns + right
        riverKm2 = Math.max(riverKm2, upstream[near]!)
        steepM = Math.max(steepM, Math.abs(values[near]! - heightM))
      }
    }
    return Math.exp(-Math.max(0, heightM - 220) / 420) * (0.3 + Math.log10(1 + riverKm2 / 8)) * Math.exp(-steepM / 55)
  })
}

function isDeepInside(terrain: Terrain, cell: number): boolean {
  const { columns } = terrain.elevation
  for (let step = -4; step <= 4; step++) {
    if (terrain.inBasin[cell + step] !== 1 || terrain.inBasin[cell + step * columns] !== 1) return false
  }
  return true
}
