/** The days and the real interval of a reading sent from a phone. */
import type { NewReading } from '@gaugewright/contract'
import {
  epochDayFromIso,
  formatInstant,
  type IsoDay,
  isoFromEpochDay,
  type ObservingDays,
  placeReading,
  usualWindow,
} from '@gaugewright/science'
import type { NetworkSettings } from '../../ports/ledger.ts'
import { type Answer, answered, refused } from '../answer.ts'

export interface EntryInterval {
  startsAtUtc: string
  endsAtUtc: string
}

const MS_PER_MINUTE = 60_000
/** Clocks of phones differ. */
const CLOCKS_MAY_DIFFER_MS = 15 * MS_PER_MINUTE
const OLDEST_DAYS = 400
const LONGEST_TOTAL_DAYS = 62

/**
 * @param emptiedAtUtc  end of the gauge's reading of the day before; null where there is none
 */
export function entryInterval(
  sent: Pick<NewReading, 'firstDay' | 'lastDay' | 'readAtUtc'>,
  network: NetworkSettings,
  days: ObservingDays,
  nowUtc: string,
  emptiedAtUtc: string | null,
): Answer<EntryInterval> {
  const first = epochDayFromIso(sent.firstDay)
  const last = epochDayFromIso(sent.lastDay)
  const nowMs = Date.parse(nowUtc)
  const endMs = sent.readAtUtc === null ? days.endUtcMs(last) : Date.parse(sent.readAtUtc)
  if (first > last || last - first >= LONGEST_TOTAL_DAYS) {
    return refused(
      'SPAN_NOT_VALID',
      `${sent.firstDay} to ${sent.lastDay}`,
      `Give days in order, at most ${LONGEST_TOTAL_DAYS} of them.`,
    )
  }
  if (endMs > nowMs + CLOCKS_MAY_DIFFER_MS) {
    return refused('ENTRY_IN_FUTURE', formatInstant(endMs), 'Set the time at which the gauge was read.')
  }
  if (last < days.dayOf(nowMs) - OLDEST_DAYS) {
    return refused('ENTRY_TOO_OLD', sent.lastDay, 'Ask your network to bring older readings in from a file.')
  }
  const { acceptWindowMin } = network
  const window = { ...usualWindow, beforeMin: acceptWindowMin, afterMin: acceptWindowMin }
  const placed = placeReading(days, endMs, null, window)
  if (placed.day !== last) return otherDay(sent.lastDay, isoFromEpochDay(placed.day))
  const openMs = days.endUtcMs(first - 1)
  const emptiedMs = emptiedAtUtc === null ? openMs : Date.parse(emptiedAtUtc)
  const startMs = emptiedMs < endMs ? emptiedMs : Math.min(openMs, endMs - MS_PER_MINUTE)
  return answered({ startsAtUtc: formatInstant(startMs), endsAtUtc: formatInstant(endMs) })
}

function otherDay(sentDay: IsoDay, placedDay: IsoDay): Answer<EntryInterval> {
  return refused(
    'ENTRY_DAY_DIFFERS',
    `${sentDay}, but a gauge read at that time gives the amount of ${placedDay}`,
    'Open the report, look at its time, and send it again.',
  )
}
