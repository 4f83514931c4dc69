import type { Problem } from '@gaugewright/contract'
import type { AmountProblemCode, AmountQuestionCode, FillProblemCode, ShefProblemCode } from '@gaugewright/science'

/** Every way in which a file, or a row of it, can be refused; each has its row in docs/errors.md. */
export type IntakeCode =
  | 'FILE_NOT_FOUND'
  | 'FILE_UNREADABLE'
  | 'FILE_EMPTY'
  | 'FILE_ENCODING'
  | 'FILE_GZIP_BROKEN'
  | 'FILE_KIND_UNCLEAR'
  | 'FILE_NOT_WRITABLE'
  | 'CSV_QUOTE_OPEN'
  | 'CSV_TOO_MANY_FIELDS'
  | 'CSV_TOO_FEW_FIELDS'
  | 'COLUMN_MISSING'
  | 'COLUMN_TWICE'
  | 'GAUGE_EMPTY'
  | 'GAUGE_TWICE'
  | 'GAUGE_UNKNOWN'
  | 'GAUGE_FIELD_NOT_VALID'
  | 'POSITION_NOT_VALID'
  | 'DAY_NOT_VALID'
  | 'SPAN_NOT_VALID'
  | 'READING_TWICE'
  | 'NO_READINGS'
  | 'TABLE_TOO_LARGE'
  | 'DLY_LAYOUT'
  | 'POSITION_ON_PLANE'
  | 'UNIT_MISSING'
  | 'NETWORK_UNCLEAR'
  | 'NETWORK_DIFFERS'
  | 'TIME_ZONE_UNKNOWN'
  | 'READING_TIME_UNCLEAR'
  | AmountProblemCode
  | AmountQuestionCode
  | FillProblemCode
  | ShefProblemCode

/**
 * Thrown by a reader of files to leave a deep loop, and while rows are drawn from a stream. The message names the file,
 * the line, the field, what was found and what was wanted. Every door turns it into its problem.
 */
export class IntakeRefusal extends Error {
  readonly problem: Problem

  constructor(code: IntakeCode, seen: string, advice: string) {
    super(`${code}: ${seen} ${advice}`)
    this.name = 'IntakeRefusal'
    this.problem = { code, seen, advice }
  }
}
