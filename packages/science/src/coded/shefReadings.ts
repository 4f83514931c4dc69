/**
 * Rain readings out of SHEF: values of PP over whole days, each with the observing days that it covers. Other elements and
 * other durations are counted, not taken; what cannot be read is told by its place.
 */
import type { EpochDay } from '../reading/epochDay.ts'
import { formatInstant } from '../reading/instant.ts'
import type { ObservingDays } from '../reading/observingDay.ts'
import { type AcceptWindow, placeReading, usualWindow } from '../reading/placeReading.ts'
import type { Amount, Unit } from '../reading/reading.ts'
import { decodeShef } from './decodeShef.ts'
import { settledShef } from './settleShef.ts'
import type { DecodedShefValue, ShefProblem } from './shef.ts'
import { shefAmount, shefWholeDays } from './shefAmount.ts'

export interface ShefReading extends Amount {
  line: number
  column: number
  location: string
  firstDay: EpochDay
  lastDay: EpochDay
  observedAtUtcMs: number
  /** The value as it stands, and its unit. */
  text: string
  unit: Unit
  remark: string | null
}

export interface ShefReadings {
  readings: ShefReading[]
  /** Refused and warned ones, in the order of the lines. */
  problems: ShefProblem[]
  /** Values passed over on purpose, by what they were. */
  passedOver: Record<string, number>
}

export function shefReadings(
  text: string,
  ask: { nowUtcMs: number; days: ObservingDays; window?: AcceptWindow | undefined },
): ShefReadings {
  const { values, problems } = decodeShef(text, ask)
  const readings: ShefReading[] = []
  const passedOver: Record<string, number> = {}
  const passOver = (what: string): void => {
    passedOver[what] = (passedOver[what] ?? 0) + 1
  }
  const settled = settledShef(values)
  if (values.length > settled.length) passedOver['replaced within the text'] = values.length - settled.length
  for (const value of settled) {
    const wholeDays = shefWholeDays(value)
    if (!value.code.startsWith('PP')) passOver(`${value.code.slice(0, 2)}: not rain`)
    else if (value.datum.kind === 'missing') passOver('said to be missing')
    else if (wholeDays === null) passOver('not over whole days')
    else {
      const amount = shefAmount(value)
      if (amount === null) {
        const { line, column, text: seen } = value
        problems.push({ code: 'SHEF_VALUE', line, column, seen, wanted: 'a depth of 0 or more', severity: 'refused' })
      } else readings.push(readingFrom(value, wholeDays, amount, ask))
    }
  }
  problems.sort((one, other) => one.line - other.line || one.column - other.column)
  return { readings, problems, passedOver }
}

function readingFrom(
  value: DecodedShefValue,
  wholeDays: number,
  amount: Amount,
  { days, window = usualWindow }: { days: ObservingDays; window?: AcceptWindow | undefined },
): ShefReading {
  const lastDay = placeReading(days, value.observedAtUtcMs, null, window).day
  return {
    ...amount,
    line: value.line,
    column: value.column,
    location: value.location,
    firstDay: lastDay - wholeDays + 1,
    lastDay,
    observedAtUtcMs: value.observedAtUtcMs,
    text: textOf(value),
    unit: value.units === 'metric' ? 'mm' : 'in',
    remark: remarkOf(value),
  }
}

/** The amount without its qualifier. */
function textOf({ datum }: DecodedShefValue): string {
  return datum.kind === 'number' ? datum.text : 'T'
}

function remarkOf(value: DecodedShefValue): string | null {
  const parts: string[] = []
  if (value.comment !== null && value.comment !== '') parts.push(value.comment)
  if (value.datum.kind === 'number' && !value.datum.text.includes('.') && value.datum.value !== 0) {
    parts.push('SHEF without a point: read as hundredths')
  }
  if (value.qualifier !== 'Z') parts.push(`SHEF qualifier ${value.qualifier}`)
  if (value.isRevision) parts.push(`SHEF revision, ${formatInstant(value.observedAtUtcMs)}`)
  return parts.length === 0 ? null : parts.join('; ')
}
