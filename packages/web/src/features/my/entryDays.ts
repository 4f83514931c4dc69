/** Which days a report is for, and the readings that it becomes. */
import type { MyGauge, NewReading } from '@gaugewright/contract'
import {
  type EpochDay,
  epochDayFromIso,
  type IsoDay,
  isoFromEpochDay,
  type ObservingDays,
  observingDays,
  placeReading,
  type Timing,
  usualWindow,
} from '@gaugewright/science'

/** The last day only, one total over all days since the last reading, or a dry day for each of them. */
export type Span = 'last' | 'total' | 'each'

export interface EntryDay {
  day: EpochDay
  timing: Timing
}

/** @throws {Error} where the network has a zone that this phone does not know */
export function daysOf(network: MyGauge['network']): ObservingDays {
  const answer = observingDays(network.timeZone, network.readingTime)
  if (answer.kind === 'problem') throw new Error(`${answer.code}: ${answer.seen}`)
  return answer.days
}

export function entryDay(network: MyGauge['network'], days: ObservingDays, readAtMs: number): EntryDay {
  const { acceptWindowMin } = network
  const window = { ...usualWindow, beforeMin: acceptWindowMin, afterMin: acceptWindowMin }
  const { day, timing } = placeReading(days, readAtMs, null, window)
  return { day, timing }
}

export interface Known {
  firstDay: IsoDay
  lastDay: IsoDay
  text: string
}

const mostMissedDays = 31

/** Days before `day` without a reading, since the newest one before it; 0 where that is the day before, or long ago. */
export function missedDays(known: readonly Known[], day: EpochDay): number {
  const earlier = known.map(({ lastDay }) => epochDayFromIso(lastDay)).filter((one) => one < day)
  if (earlier.length === 0) return 0
  const missed = day - Math.max(...earlier) - 1
  return missed > mostMissedDays ? 0 : missed
}

export function readingOf(known: readonly Known[], day: EpochDay): Known | undefined {
  const iso = isoFromEpochDay(day)
  return known.find(({ lastDay }) => lastDay === iso)
}

export interface EntryMade {
  day: EpochDay
  missed: number
  span: Span
  readAtUtc: string
  /** The reading hour of the day stands for a time that nobody changed by hand and that is a correction's own. */
  text: string
  unit: 'mm' | 'in'
  remark: string
  confirmed: NewReading['confirmed']
  corrects: { id: string; firstDay: IsoDay; lastDay: IsoDay } | null
}

/** @param newId  makes the ids by which the desk knows a reading that it has */
export function readingsOf(entry: EntryMade, newId: () => string): NewReading[] {
  const { day, missed, span, readAtUtc, text, unit, confirmed, corrects } = entry
  const remark = entry.remark.trim() === '' ? null : entry.remark.trim()
  const last = corrects?.lastDay ?? isoFromEpochDay(day)
  const common = { text, unit, remark, confirmed }
  const newest: NewReading = {
    ...common,
    id: newId(),
    firstDay: corrects?.firstDay ?? (span === 'total' ? isoFromEpochDay(day - missed) : last),
    lastDay: last,
    readAtUtc,
    corrects: corrects?.id ?? null,
  }
  if (span !== 'each' || corrects !== null) return [newest]
  const before = Array.from({ length: missed }, (_, index): NewReading => {
    const one = isoFromEpochDay(day - missed + index)
    return { ...common, id: newId(), firstDay: one, lastDay: one, readAtUtc: null, corrects: null }
  })
  return [...before, newest]
}
