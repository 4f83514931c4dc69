import type { LatentTable } from '../expectation/latentTable.ts'
import type { Stretch } from './sequence.ts'

/**
 * Of reports that look dated a day off or carried over days at a gauge without a habit, the share that are slips; the
 * others are rain about the reading hour that went to one day here and to the other there. The size is a
 * guess that labelled days of open networks agreed with (docs/decisions/0009). A total
 * after days without any report is not of that kind.
 */
const usualSlipShare = 0.75

/** Share of a stretch that is a slip, not the gauge's habit or the weather's hour (0 to 1). */
export function slipShareOf(latent: LatentTable, gauge: number, stretch: Stretch): number {
  const { table, model } = latent
  let isReported = true
  for (let row = stretch.from; row < stretch.to; row++)
    if (table.spanDays[row * table.gaugeCount + gauge] === 0) isReported = false
  return model.slipShare[gauge]! * (isReported ? usualSlipShare : 1)
}
