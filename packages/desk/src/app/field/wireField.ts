/** A field in the shape of the contract: a regular grid in degrees, row 0 in the north, null outside the outline. */
import type { DayField } from '@gaugewright/contract'
import { type DayAmounts, fieldWith, isohyetLevels, isohyets, type Unit } from '@gaugewright/science'
import type { Ledger } from '../../ports/ledger.ts'
import type { JudgedMorning } from '../morning/judgedMorning.ts'
import { RecentlyUsed } from '../morning/recentlyUsed.ts'
import { amountsKey } from './amountsKey.ts'
import { areaMeansOf } from './areaMeansOf.ts'
import { type MorningMap, paramsOfMorning } from './fieldOfMorning.ts'
import type { MapGrid } from './mapFrame.ts'

const kept = new WeakMap<Ledger, RecentlyUsed<DayField>>()

export function wireField(ledger: Ledger, judged: JudgedMorning, map: MorningMap, amounts: DayAmounts): DayField {
  const { params, key: paramsKey } = paramsOfMorning(ledger, judged)
  const cache = kept.get(ledger) ?? new RecentlyUsed<DayField>(24)
  kept.set(ledger, cache)
  const key = `${paramsKey} ${amountsKey(amounts)}`
  const before = cache.get(key)
  if (before !== undefined) return before
  const { grid } = map
  const { west, south, east, north, columns, rows } = grid
  const values = fieldWith(params, judged.learned.gaugeSet, amounts, grid.points)
  const made: DayField = {
    day: judged.morning.day,
    west,
    south,
    east,
    north,
    columns,
    rows,
    meanMm: rounded(overGrid(values.meanMm, grid)),
    p10Mm: rounded(overGrid(values.p10Mm, grid)),
    p50Mm: rounded(overGrid(values.p50Mm, grid)),
    p90Mm: rounded(overGrid(values.p90Mm, grid)),
    isohyets: linesOver(overGrid(values.p50Mm, grid), grid, judged.morning.network.unit),
    areas: areaMeansOf(ledger, judged, map, amounts),
  }
  cache.set(key, made)
  return made
}

/** Values of the cells inside the outline, put in their places; NaN elsewhere. */
function overGrid(ofCells: Float64Array, grid: MapGrid): Float64Array {
  const out = new Float64Array(grid.columns * grid.rows).fill(Number.NaN)
  for (let index = 0; index < grid.cells.length; index++) {
    out[grid.cells[index] ?? 0] = ofCells[index] ?? Number.NaN
  }
  return out
}

function rounded(valuesMm: Float64Array): (number | null)[] {
  return Array.from(valuesMm, (value) => (Number.isNaN(value) ? null : Math.round(value * 100) / 100))
}

/** Lines of equal median amount, at amounts that are round in the network's unit. */
function linesOver(valuesMm: Float64Array, grid: MapGrid, unit: Unit): DayField['isohyets'] {
  const largestMm = valuesMm.reduce((most, value) => Math.max(most, value || 0), 0)
  const place = (degrees: number): number => Math.round(degrees * 100_000) / 100_000
  return isohyets(valuesMm, grid, isohyetLevels(largestMm, unit)).map(({ levelMm, lines }) => ({
    levelMm,
    lines: lines.map((line) => line.map(([lonDeg, latDeg]): [number, number] => [place(lonDeg), place(latDeg)])),
  }))
}
