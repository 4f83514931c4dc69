/** Files of gauges and readings, read without a ledger: what `check` and `expect` work on. */
import type { DailyTable, Unit } from '@gaugewright/science'
import type { Answer } from './answer.ts'

/** n gauges or points in the order of the file; what a file does not give is NaN. */
export interface PlacesTable {
  gaugeIds: readonly string[]
  plane: 'degrees' | 'metres'
  latDeg: Float64Array
  lonDeg: Float64Array
  xM: Float64Array
  yM: Float64Array
  elevationM: Float64Array
}

export interface ArchiveFiles {
  /** @param idNames names of the first column; `gauge` or `id` where left out */
  readPlaces: (path: string, options: { idNames?: readonly string[] }) => Promise<Answer<PlacesTable>>
  /** @returns a table whose columns are `gaugeIds`, from the first to the last day that has a reading */
  readReadings: (
    path: string,
    options: { unit: Unit; gaugeIds: readonly string[]; fromDay?: number; toDay?: number },
  ) => Promise<Answer<{ table: DailyTable; readingCount: number; leftOut: readonly string[] }>>
}
