/**
 * Values to SHEF text, in UTC with whole dates, so that nothing depends on when or where it is read. What is encoded is
 * decoded to the same values. Source: [SHEF2012] 4.
 */
import type { ShefDatum, ShefSpan, ShefValue } from './shef.ts'
import { sevenOClockCodes, shortShefCode, wholeShefCode } from './shefCodes.ts'
import { locationPattern } from './shefContext.ts'
import type { ShefStep } from './shefTime.ts'
import { readShefValue } from './shefValue.ts'
import { wallOfInstant } from './shefZones.ts'

export type ShefText =
  | { kind: 'text'; text: string }
  | { kind: 'problem'; code: 'SHEF_CANNOT_SAY'; seen: string; wanted: string }

/** One station and one code at even steps from `firstAtUtcMs`; null is a value that is not reported. */
export interface ShefSeries {
  location: string
  firstAtUtcMs: number
  step: ShefStep
  createdAtUtcMs?: number | null
  code: string
  variable?: ShefSpan | null
  units: 'english' | 'metric'
  isRevision?: boolean
  data: readonly (ShefDatum | null)[]
}

/** One time, the same codes for many stations; null is a value that is not reported. */
export interface ShefTable {
  /** Whoever sends it, as a location. */
  source: string
  observedAtUtcMs: number
  createdAtUtcMs?: number | null
  codes: readonly string[]
  units: 'english' | 'metric'
  isRevision?: boolean
  /** `observedAtUtcMs`: where a station was read at another time than the table's. */
  rows: readonly { location: string; observedAtUtcMs?: number | undefined; data: readonly (ShefDatum | null)[] }[]
}

const LINE_WIDTH = 80
const MOST_CONTINUATIONS = 99
/** Of instants that a calendar knows. */
const FURTHEST_MS = 8.64e15

/** `.A`: each run of values of one station and time becomes a message. */
export function encodeShefValues(values: readonly ShefValue[]): ShefText {
  return answer(() => {
    let text = ''
    let fields: string[] = []
    let head = ''
    const flush = (): void => {
      if (fields.length > 0) text += wrapped(head, fields)
      fields = []
    }
    for (const value of values) {
      const next = `.A${value.isRevision ? 'R' : ''} ${location(value.location)} ${headTerms(value)}`
      if (next !== head) flush()
      head = next
      if (value.variable !== null) fields.push(`DV${value.variable.unit}${two(value.variable.count)}`)
      fields.push(`${codeText(value)} ${valueText(value)}`)
    }
    flush()
    return text
  })
}

/** `.E`. */
export function encodeShefSeries(series: ShefSeries): ShefText {
  return answer(() => {
    const { data, step, variable = null } = series
    if (step.count < 1 || step.count > 99) throw new CannotSay(`a step of ${step.count}`, 'a step of 1 to 99')
    const like = {
      ...series,
      observedAtUtcMs: series.firstAtUtcMs,
      createdAtUtcMs: series.createdAtUtcMs ?? null,
      variable,
    }
    const head = `.E${series.isRevision === true ? 'R' : ''} ${location(series.location)} ${headTerms(like)}`
    const fields = variable === null ? [] : [`DV${variable.unit}${two(variable.count)}`]
    fields.push(codeText(like), `DI${step.unit}${two(step.count)}`)
    for (const datum of data) fields.push(datum === null ? '' : datumText(datum, series.code, series.units))
    return wrapped(head, fields)
  })
}

/** `.B`. */
export function encodeShefTable(table: ShefTable): ShefText {
  return answer(() => {
    const like = { ...table, createdAtUtcMs: table.createdAtUtcMs ?? null, variable: null }
    const head = `.B${table.isRevision === true ? 'R' : ''} ${location(table.source)} ${headTerms(like)}`
    let text = wrapped(
      head,
      table.codes.map((code) => codeText({ code, variable: null })),
    )
    for (const row of table.rows) {
      if (row.data.length > table.codes.length) {
        throw new CannotSay(`${row.data.length} values for ${table.codes.length} codes`, 'at most one value a code')
      }
      const data = row.data.map((datum, index) =>
        datum === null ? '' : datumText(datum, table.codes[index] as string, table.units),
      )
      const group = rowTime(row.observedAtUtcMs ?? table.observedAtUtcMs, table.observedAtUtcMs)
      text += `${location(row.location)} ${group}${data.join('/').replace(/\/+$/, '')}`.trimEnd()
      text += '\n'
    }
    return `${text}.END\n`
  })
}

class CannotSay extends Error {
  readonly seen: string
  readonly wanted: string

  constructor(seen: string, wanted: string) {
    super(`${seen}: ${wanted}`)
    this.seen = seen
    this.wanted = wanted
  }
}

function answer(make: () => string): ShefText {
  try {
    return { kind: 'text', text: make() }
  } catch (error) {
    if (!(error instanceof CannotSay)) throw error
    return { kind: 'problem', code: 'SHEF_CANNOT_SAY', seen: error.seen, wanted: error.wanted }
  }
}

/** `20260329 Z DH140000/DC…/DUS`. */
function headTerms(of: Pick<ShefValue, 'observedAtUtcMs' | 'createdAtUtcMs' | 'units'>): string {
  const [date, clock] = digitsOf(of.observedAtUtcMs)
  const groups = [`DH${clock.endsWith('00') ? clock.slice(0, 4) : clock}`]
  if (of.createdAtUtcMs !== null) {
    const [createdDate, createdClock] = digitsOf(of.createdAtUtcMs)
    if (!createdClock.endsWith('00')) throw new CannotSay('a creation time with seconds', 'whole minutes')
    groups.push(`DC${createdDate}${createdClock.slice(0, 4)}`)
  }
  if (of.units === 'metric') groups.push('DUS')
  return `${date} Z ${groups.join('/')}`
}

/** ccyymmdd and hhnnss in UTC. */
function digitsOf(utcMs: number): [string, string] {
  if (!Number.isInteger(utcMs / 1000) || Math.abs(utcMs) > FURTHEST_MS) {
    throw new CannotSay(`the instant ${utcMs} ms`, 'whole seconds')
  }
  const { year, month, day, hour, minute, second } = wallOfInstant(utcMs, 'UTC')
  if (year < 1000 || year > 9999) throw new CannotSay(`the year ${year}`, 'a year from 1000 to 9999')
  return [`${year}${two(month)}${two(day)}`, `${two(hour)}${two(minute)}${two(second)}`]
}

/** The group that moves a station from the time of its table to its own, and the slash behind it. */
function rowTime(ownMs: number, tableMs: number): string {
  if (ownMs === tableMs) return ''
  const [date, clock] = digitsOf(ownMs)
  const [tableDate] = digitsOf(tableMs)
  const time = clock.endsWith('00') ? clock.slice(0, 4) : clock
  if (date === tableDate) return `DH${time}/`
  if (date.slice(0, 4) === tableDate.slice(0, 4)) return `DM${date.slice(4)}${time}/`
  return date.slice(0, 2) === tableDate.slice(0, 2) ? `DY${date.slice(2)}${time}/` : `DT${date}${time}/`
}

function location(text: string): string {
  if (locationPattern.test(text)) return text
  throw new CannotSay(`the location "${text}"`, '3 to 8 of A-Z, 0-9 and _')
}

function codeText({ code, variable }: Pick<ShefValue, 'code' | 'variable'>): string {
  const whole = wholeShefCode(code)
  if (whole === null || sevenOClockCodes.has(code))
    throw new CannotSay(`the code "${code}"`, 'a parameter code without a local hour')
  if (whole[2] === 'P') throw new CannotSay(`the code "${code}"`, 'a duration that needs no local 07:00')
  if ((whole[2] === 'V') !== (variable !== null))
    throw new CannotSay(`the code "${code}"`, 'a span with the duration V, and only with it')
  if (variable !== null && !(Number.isInteger(variable.count) && variable.count >= 1 && variable.count <= 99)) {
    throw new CannotSay(`a span of ${variable.count}`, 'a whole span of 1 to 99')
  }
  return shortShefCode(whole)
}

function valueText(value: ShefValue): string {
  const datum = datumText(value.datum, value.code, value.units)
  const qualifier = value.qualifier === 'Z' ? '' : value.qualifier
  if (qualifier !== '' && value.datum.kind === 'missing' && datum !== '+') throw new CannotSay('a missing value', '+')
  if (value.comment !== null && (/["\r\n]/.test(value.comment) || value.comment.length > 80)) {
    throw new CannotSay(`the comment "${value.comment}"`, 'at most 80 characters without a quote')
  }
  return `${datum}${qualifier}${value.comment === null ? '' : ` "${value.comment}"`}`
}

function datumText(datum: ShefDatum, code: string, units: 'english' | 'metric'): string {
  const text = datum.kind === 'missing' ? '+' : datum.kind === 'trace' ? 'T' : datum.text
  const read = readShefValue(text, code.slice(0, 2), units)
  const isSame =
    read.kind === 'value' &&
    read.qualifier === null &&
    read.datum.kind === datum.kind &&
    (read.datum.kind !== 'number' || datum.kind !== 'number' || read.datum.value === datum.value)
  if (!isSame) throw new CannotSay(`"${text}" for ${code}`, 'a value that reads back as it is')
  return text
}

/** Fields behind a head, at most 80 columns a line where they let themselves be parted. */
function wrapped(head: string, fields: readonly string[]): string {
  const [, tag = '.A', form = 'A'] = /^(\.([ABE])R?)/.exec(head) ?? []
  let line = head
  let text = ''
  let number = 0
  fields.forEach((field, index) => {
    // A slash at an end of a line says nothing of a value: one that is not reported stays within its line.
    const fits = line.length + 1 + field.length <= LINE_WIDTH
    const mayBreak = field !== '' && fields[index - 1] !== '' && index > 0
    if (fits || !mayBreak || number === MOST_CONTINUATIONS) {
      line += `/${field}`
      return
    }
    text += `${line}\n`
    number++
    line = `.${form}${tag.endsWith('R') ? 'R' : ''}${number} ${field}`
  })
  text += `${line}\n`
  if (text.split('\n').some((part) => part.length > 1000))
    throw new CannotSay(`${fields.length} values`, 'fewer values in one message')
  return text
}

function two(value: number): string {
  return String(value).padStart(2, '0')
}
