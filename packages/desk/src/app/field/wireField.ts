/** A field in the shape of the contract: a regular grid in degrees, row 0 in the north, null outside the outline. */
import type { DayField } from '@gaugewright/contract'
import type { DayAmounts } from '@gaugewright/science'
import type { Ledger } from '../../ports/ledger.ts'
import type { JudgedMorning } from '../morning/judgedMorning.ts'
import { areaMeansOf } from './areaMeansOf.ts'
import { fieldOver, type MorningMap, paramsOfMorning } from './fieldOfMorning.ts'

export function wireField(ledger: Ledger, judged: JudgedMorning, map: MorningMap, amounts: DayAmounts): DayField {
  const { grid } = map
  const params = paramsOfMorning(ledger, judged)
  const values = fieldOver(judged, params, amounts, grid)
  const onGrid = (ofCells: Float64Array): (number | null)[] => {
    const out = new Array<number | null>(grid.columns * grid.rows).fill(null)
    for (let index = 0; index < grid.cells.length; index++) {
      const value = ofCells[index] ?? Number.NaN
      if (!Number.isNaN(value)) out[grid.cells[index] ?? 0] = Math.round(value * 100) / 100
    }
    return out
  }
  return {
    day: judged.morning.day,
    west: grid.west,
    south: grid.south,
    east: grid.east,
    north: grid.north,
    columns: grid.columns,
    rows: grid.rows,
    meanMm: onGrid(values.meanMm),
    p10Mm: onGrid(values.p10Mm),
    p50Mm: onGrid(values.p50Mm),
    p90Mm: onGrid(values.p90Mm),
    isohyets: [],
    areas: areaMeansOf(ledger, judged, map, amounts),
  }
}
