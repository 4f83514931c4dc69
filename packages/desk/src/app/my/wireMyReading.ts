import type { MyReading } from '@gaugewright/contract'
import type { Reading } from '@gaugewright/science'

export function wireMyReading(reading: Reading): MyReading {
  const { id, firstDay, lastDay, endsAtUtc, amountUm, isTrace, text, unit, remark, receivedAtUtc, supersedes } = reading
  const isCorrection = supersedes !== null
  return { id, firstDay, lastDay, endsAtUtc, amountUm, isTrace, text, unit, remark, receivedAtUtc, isCorrection }
}
