/**
 * Why a file, or one row of it, was not taken: where, what was found, what was wanted. Readers inside intake throw an
 * IntakeRefusal to leave a deep loop; every function that others call catches it and returns the problem (`guarded`).
 */
import { basename } from 'node:path'
import type { Problem } from '@gaugewright/contract'

/** Every way in which a file can be refused; each has its row in docs/errors.md. */
export type IntakeCode =
  | 'FILE_NOT_FOUND'
  | 'FILE_UNREADABLE'
  | 'FILE_EMPTY'
  | 'FILE_ENCODING'
  | 'FILE_GZIP_BROKEN'
  | 'FILE_KIND_UNCLEAR'
  | 'CSV_QUOTE_OPEN'
  | 'CSV_TOO_MANY_FIELDS'
  | 'CSV_TOO_FEW_FIELDS'
  | 'COLUMN_MISSING'
  | 'COLUMN_TWICE'
  | 'GAUGE_EMPTY'
  | 'GAUGE_TWICE'
  | 'GAUGE_UNKNOWN'
  | 'POSITION_NOT_VALID'
  | 'GAUGE_FIELD_NOT_VALID'
  | 'DAY_NOT_VALID'
  | 'SPAN_NOT_VALID'
  | 'AMOUNT_NOT_VALID'
  | 'AMOUNT_UNCLEAR'
  | 'READING_TWICE'
  | 'NO_READINGS'
  | 'TABLE_TOO_LARGE'
  | 'DLY_LAYOUT'
  | 'DLY_TOTAL_WITHOUT_DAYS'

/** A value, or the problem that a person can mend. */
export type Outcome<T> = { ok: true; value: T } | { ok: false; problem: Problem }

/** Where in a file: the line is counted from 1, the header included. */
export interface Place {
  path: string
  line?: number
  field?: string
}

export class IntakeRefusal extends Error {
  readonly problem: Problem

  constructor(code: IntakeCode, seen: string, advice: string) {
    super(`${code}: ${seen} ${advice}`)
    this.name = 'IntakeRefusal'
    this.problem = { code, seen, advice }
  }
}

/** `readings.csv line 14, amount: found "1.2.3", wanted a depth in mm.` */
export function placed(place: Place, found: string, wanted: string): string {
  return `${placeText(place)}: found ${quoted(found)}, wanted ${wanted}.`
}

export function placeText(place: Place): string {
  const line = place.line === undefined ? '' : ` line ${place.line}`
  const field = place.field === undefined ? '' : `, ${place.field}`
  return `${basename(place.path)}${line}${field}`
}

/** Text from a file, safe to print on one line: control characters as escapes, at most 60 characters. */
export function quoted(text: string): string {
  if (text === '') return 'nothing'
  const short = text.length > 60 ? `${text.slice(0, 57)}...` : text
  return JSON.stringify(short)
}

/** Run a reader; a refusal becomes a problem, anything else is a fault of ours and passes on. */
export async function guarded<T>(read: () => Promise<T>): Promise<Outcome<T>> {
  try {
    return { ok: true, value: await read() }
  } catch (error) {
    if (error instanceof IntakeRefusal) return { ok: false, problem: error.problem }
    throw error
  }
}
