import type { LatentTable } from '../expectation/latentTable.ts'
import type { Stretch } from './sequence.ts'

/** What a stretch makes of the report on one of its rows: the carried total over its days, or the day's own amount. */
export function stretchAmount(
  latent: LatentTable,
  stretch: Stretch,
  row: number,
  gauge: number,
): { amountMm: number; firstDay: number; lastDay: number } {
  const { table } = latent
  const at = (r: number): number => table.amountMm[r * table.gaugeCount + gauge]!
  const day = table.firstDay + row
  if (stretch.kind === 'carried')
    return { amountMm: at(stretch.to), firstDay: table.firstDay + stretch.from, lastDay: table.firstDay + stretch.to }
  if (stretch.kind === 'late') return { amountMm: row === stretch.to ? 0 : at(row + 1), firstDay: day, lastDay: day }
  return { amountMm: row === stretch.from ? 0 : at(row - 1), firstDay: day, lastDay: day }
}
