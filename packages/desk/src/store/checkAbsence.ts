import { epochDayFromIso } from '@gaugewright/science'
import { LedgerError } from '../ports/ledgerError.ts'

/** Longest absence in days: longer ones are a closed gauge. */
const LONGEST_DAYS = 366

/** @throws {LedgerError} ABSENCE_NOT_VALID */
export function checkAbsence({ firstDay, lastDay }: { firstDay: string; lastDay: string }): void {
  const days = epochDayFromIso(lastDay) - epochDayFromIso(firstDay) + 1
  if (days >= 1 && days <= LONGEST_DAYS) return
  throw new LedgerError(
    'ABSENCE_NOT_VALID',
    `An absence from ${firstDay} to ${lastDay}.`,
    `Let the last day be no earlier than the first, and no more than ${LONGEST_DAYS} days in all.`,
  )
}
