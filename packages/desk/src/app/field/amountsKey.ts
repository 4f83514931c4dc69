/** Names a day's amounts, so that what was made from them can be kept: the same amounts give the same map. */
import { createHash } from 'node:crypto'
import type { DayAmounts } from '@gaugewright/science'

export function amountsKey(amounts: DayAmounts): string {
  const digest = createHash('sha1')
  digest.update(new Uint8Array(amounts.amountMm.buffer, amounts.amountMm.byteOffset, amounts.amountMm.byteLength))
  if (amounts.isTrace !== undefined) digest.update(amounts.isTrace)
  return digest.digest('base64url')
}
