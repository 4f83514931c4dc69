/**
 * SHEF, the hydrometeorological exchange format: what a decoder gives and an encoder takes. Source of all of it:
 * [SHEF2012]; the sections are named where the rules stand.
 */

/** A number as it stands (in the unit of its system), a trace, or a value that is said to be missing. */
export type ShefDatum = { kind: 'number'; value: number; text: string } | { kind: 'trace' } | { kind: 'missing' }

export interface ShefValue {
  /** 3 to 8 characters A-Z 0-9 _. */
  location: string
  observedAtUtcMs: number
  /** When the message says that it was made (DC); null where it does not. */
  createdAtUtcMs: number | null
  /** All seven letters, defaults filled in: `PPDRZZZ`. */
  code: string
  /** What the duration letter V stands for; null with any other letter. */
  variable: ShefSpan | null
  /** For the duration letter P: the previous 07:00 local; null with any other letter. */
  sinceUtcMs: number | null
  datum: ShefDatum
  units: 'english' | 'metric'
  /** One letter, Z where none is given. */
  qualifier: string
  isRevision: boolean
  comment: string | null
}

export interface ShefSpan {
  /** Seconds, minutes, hours, days, months, years. */
  unit: 'S' | 'N' | 'H' | 'D' | 'M' | 'Y'
  count: number
}

export type ShefForm = 'A' | 'B' | 'E'

/** A value and where it stands; lines and columns from 1. */
export interface DecodedShefValue extends ShefValue {
  form: ShefForm
  line: number
  column: number
  /** The field as it stands. */
  text: string
}

export type ShefProblemCode =
  | 'SHEF_BLANKS'
  | 'SHEF_CODE'
  | 'SHEF_CONTINUATION'
  | 'SHEF_DATE'
  | 'SHEF_DATE_GROUP'
  | 'SHEF_DECIMAL_MISSING'
  | 'SHEF_DURATION'
  | 'SHEF_END_MISSING'
  | 'SHEF_FIELD'
  | 'SHEF_HEADER'
  | 'SHEF_INTERVAL'
  | 'SHEF_LINE_TOO_LONG'
  | 'SHEF_LOCATION'
  | 'SHEF_MESSAGE_BROKEN'
  | 'SHEF_OUTSIDE'
  | 'SHEF_QUALIFIER'
  | 'SHEF_QUOTE_OPEN'
  | 'SHEF_TAG'
  | 'SHEF_TIME_ZONE'
  | 'SHEF_TOO_MANY_VALUES'
  | 'SHEF_TRACE'
  | 'SHEF_TWICE'
  | 'SHEF_VALUE'

export interface ShefProblem {
  code: ShefProblemCode
  line: number
  column: number
  seen: string
  wanted: string
  /** `refused`: something that was meant to be said is not taken. `warned`: it is taken, or was not meant as data. */
  severity: 'refused' | 'warned'
}

/**
 * What became of a line. `values`: it gave some. `frame`: it holds a message together (headers, .END). `no report`: a
 * station without any. `outside`: bulletin lines around messages. `refused`: a problem stands at it.
 */
export type ShefOutcome = 'values' | 'frame' | 'no report' | 'comment' | 'blank' | 'outside' | 'refused'

export interface ShefDecoded {
  values: DecodedShefValue[]
  problems: ShefProblem[]
  /** One for each line of the text, in order. */
  lines: ShefOutcome[]
}
