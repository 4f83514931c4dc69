/** What every adapter refuses before it stores: whole amounts, real days, an interval that runs forward. */
import { parseIsoDay, type Reading } from '@gaugewright/science'
import { LedgerError } from '../ports/ledgerError.ts'

/** First and last day as epoch days. @throws {LedgerError} READING_NOT_VALID */
export function checkReading(reading: Reading): { firstDay: number; lastDay: number } {
  const firstDay = parseIsoDay(reading.firstDay)
  const lastDay = parseIsoDay(reading.lastDay)
  if (firstDay === null || lastDay === null || firstDay > lastDay) {
    throw refused(
      reading,
      `covers "${reading.firstDay}" to "${reading.lastDay}"`,
      'Give real dates, the first not after the last.',
    )
  }
  if (!Number.isSafeInteger(reading.amountUm) || reading.amountUm < 0) {
    throw refused(reading, `has the amount ${reading.amountUm}`, 'Give whole micrometres, 0 or more.')
  }
  if (reading.isTrace && reading.amountUm !== 0) {
    throw refused(reading, `is a trace of ${reading.amountUm} µm`, 'A trace has the amount 0.')
  }
  return { firstDay, lastDay }
}

function refused(reading: Reading, seen: string, advice: string): LedgerError {
  return new LedgerError('READING_NOT_VALID', `The reading ${reading.id} of gauge ${reading.gaugeId} ${seen}.`, advice)
}
