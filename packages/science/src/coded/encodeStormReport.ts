/**
 * Local storm report text, to the column. Line 1: time 1-8, event 13-29, place 30-53, position from 54. Line 2: date
 * 1-10, magnitude 13-29, county 30-48, state 49-50, source from 54. Remarks from column 13 after a blank line.
 * Source: [LSR].
 */
import { Temporal } from 'temporal-polyfill'
import { bulletinText, lineAtColumns, wrapWords } from './fixedColumns.ts'
import type { StormMagnitude, StormOffice, StormReport } from './stormReport.ts'

export interface StormText {
  /** Whole lines, each ended by a line feed. */
  text: string
  /** Fields that did not fit their columns and were cut; a person looks before it is sent. */
  cut: string[]
}

const REMARK_COLUMN = 13
const LINE_WIDTH = 69
const weekdays = ['MON', 'TUE', 'WED', 'THU', 'FRI', 'SAT', 'SUN']
const months = ['JAN', 'FEB', 'MAR', 'APR', 'MAY', 'JUN', 'JUL', 'AUG', 'SEP', 'OCT', 'NOV', 'DEC']

/**
 * The lines of one report, ready to be pasted into a bulletin.
 * @throws {RangeError} where the office's zone is none, or a number is not finite
 */
export function encodeStormReport(report: StormReport, office: Pick<StormOffice, 'timeZone'>): StormText {
  const at = Temporal.Instant.fromEpochMilliseconds(report.happenedAtUtcMs).toZonedDateTimeISO(office.timeZone)
  const date = `${two(at.month)}/${two(at.day)}/${String(at.year).padStart(4, '0')}`
  const first = lineAtColumns([
    { column: 1, width: 8, name: 'time', text: clockText(at) },
    { column: 13, width: 17, name: 'event', text: report.event },
    { column: 30, width: 24, name: 'place', text: bulletinText(report.place) },
    { column: 54, width: null, name: 'position', text: positionText(report.latDeg, report.lonDeg) },
  ])
  const second = lineAtColumns([
    { column: 1, width: 10, name: 'date', text: date },
    { column: 13, width: 17, name: 'magnitude', text: magnitudeText(report) },
    { column: 30, width: 19, name: 'county', text: bulletinText(report.county) },
    { column: 49, width: 2, name: 'state', text: bulletinText(report.state) },
    { column: 54, width: null, name: 'source', text: bulletinText(report.source) },
  ])
  const remark = wrapWords(bulletinText(report.remark ?? ''), LINE_WIDTH - REMARK_COLUMN + 1)
  const remarkLines = remark.map((line) => ' '.repeat(REMARK_COLUMN - 1) + line)
  const lines = [first.line, second.line, ...(remark.length === 0 ? [] : ['', ...remarkLines])]
  return { text: `${lines.join('\n')}\n`, cut: [...first.cut, ...second.cut] }
}

/**
 * A whole bulletin: heading, titles of the columns, each report and the two end marks.
 * @param issued the instant of the heading, and whether it corrects or sums up earlier ones
 * @throws {RangeError} as encodeStormReport
 */
export function encodeStormBulletin(
  reports: readonly StormReport[],
  office: StormOffice,
  issued: { atUtcMs: number; kind?: 'CORRECTED' | 'SUMMARY' | undefined },
): StormText {
  const at = Temporal.Instant.fromEpochMilliseconds(issued.atUtcMs).toZonedDateTimeISO(office.timeZone)
  const date = `${weekdays[at.dayOfWeek - 1]} ${months[at.month - 1]} ${two(at.day)} ${at.year}`
  const clock = clockText(at)
  const lines = [
    ...(office.heading ?? []),
    `PRELIMINARY LOCAL STORM REPORT${issued.kind === undefined ? '' : `...${issued.kind}`}`,
    bulletinText(office.name),
    `${clock.replace(/^0/, '')} ${zoneText(at, office)} ${date}`,
    '',
    '..TIME...   ...EVENT...      ...CITY LOCATION...     ...LAT.LON...',
    '..DATE...   ....MAG....      ..COUNTY LOCATION..ST.. ...SOURCE....',
    '            ..REMARKS..',
    '',
  ]
  const entries = reports.map((report) => encodeStormReport(report, office))
  const body = entries.map(({ text }) => `${text}\n`).join('')
  return { text: `${lines.join('\n')}\n${body}&&\n\n$$\n`, cut: entries.flatMap(({ cut }) => cut) }
}

/** `0914 PM`; noon is 1200 PM, midnight 1200 AM. */
function clockText(at: Temporal.ZonedDateTime): string {
  return `${two(at.hour % 12 === 0 ? 12 : at.hour % 12)}${two(at.minute)} ${at.hour < 12 ? 'AM' : 'PM'}`
}

/** `33.60N 90.77W`. */
function positionText(latDeg: number, lonDeg: number): string {
  const lat = `${Math.abs(latDeg).toFixed(2)}${latDeg < 0 ? 'S' : 'N'}`
  return `${lat} ${Math.abs(lonDeg).toFixed(2)}${lonDeg < 0 ? 'W' : 'E'}`
}

/** Hail and rain to hundredths, snow and sleet to tenths, wind to whole miles an hour. */
function magnitudeText({ magnitude, event }: StormReport): string {
  if (magnitude === null) return ''
  return `${magnitude.how}${magnitudeNumber(magnitude, event)} ${magnitude.unit}`
}

function magnitudeNumber({ value, unit }: StormMagnitude, event: StormReport['event']): string {
  if (value === null) return '  T'
  if (unit === 'MPH') return String(Math.round(value))
  return value.toFixed(event === 'SNOW' || event === 'HEAVY SNOW' || event === 'SLEET' ? 1 : 2)
}

/** The office's own words, or the distance from UTC: `UTC-5`. */
function zoneText(at: Temporal.ZonedDateTime, { zoneWords }: StormOffice): string {
  const offsetMin = at.offsetNanoseconds / 60e9
  if (zoneWords !== undefined) {
    const summer = at.with({ month: 7, day: 1 }).offsetNanoseconds
    const winter = at.with({ month: 1, day: 1 }).offsetNanoseconds
    const isForward = summer !== winter && at.offsetNanoseconds === Math.max(summer, winter)
    return isForward ? zoneWords.daylight : zoneWords.standard
  }
  if (offsetMin === 0) return 'UTC'
  const minutes = Math.abs(offsetMin) % 60
  const hours = Math.floor(Math.abs(offsetMin) / 60)
  return `UTC${offsetMin < 0 ? '-' : '+'}${hours}${minutes === 0 ? '' : `:${two(minutes)}`}`
}

function two(value: number): string {
  return String(value).padStart(2, '0')
}
