/** What is wrong with an amended amount, if anything: the same for a decision and for the question what it would do. */
import type { DecideAsk } from '@gaugewright/contract'
import { epochDayFromIso, type Reading } from '@gaugewright/science'
import { refused } from './answer.ts'

/** No rain gauge has ever caught this much in a few days: 10 m. */
const IMPOSSIBLE_UM = 10_000_000
/** An amended interval ends within this many days of the reading, and covers no more than a month. */
const NEAR_DAYS = 8
const LONGEST_DAYS = 31

export function amendedProblem(
  amended: NonNullable<DecideAsk['amended']>,
  reading: Pick<Reading, 'lastDay'>,
): ReturnType<typeof refused> | null {
  const first = epochDayFromIso(amended.firstDay)
  const last = epochDayFromIso(amended.lastDay)
  const away = Math.abs(last - epochDayFromIso(reading.lastDay))
  if (last < first || last - first >= LONGEST_DAYS || away > NEAR_DAYS) {
    return refused(
      'AMENDED_DAYS_IMPOSSIBLE',
      `${amended.firstDay} to ${amended.lastDay}, for a reading of ${reading.lastDay}`,
      `Give days in order, at most ${LONGEST_DAYS} of them, ending within ${NEAR_DAYS} days of the reading.`,
    )
  }
  if (amended.amountUm < 0 || amended.amountUm >= IMPOSSIBLE_UM || (amended.isTrace && amended.amountUm !== 0)) {
    return refused(
      'AMENDED_AMOUNT_IMPOSSIBLE',
      amended.isTrace ? `a trace of ${amended.amountUm} µm` : `${amended.amountUm / 1000} mm`,
      'Give the amount in micrometres, from 0 to below ten metres; a trace has the amount 0.',
    )
  }
  return null
}
