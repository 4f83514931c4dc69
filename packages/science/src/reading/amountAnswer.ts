/**
 * What can come of reading a typed amount: an amount, a missing reading, a question with the things it could mean, or
 * a problem. Never a guess: where a text could mean two things, both are offered and neither is taken.
 */
import type { Unit } from './reading.ts'

export type AmountAnswer =
  | { kind: 'amount'; amountUm: number; isTrace: boolean; unit: Unit }
  | { kind: 'missing' }
  | { kind: 'question'; code: AmountQuestionCode; seen: string; advice: string; choices: AmountChoice[] }
  | { kind: 'problem'; code: AmountProblemCode | FillProblemCode; seen: string; advice: string }

/** One thing a text could mean. Typed in its place (with `confirmed`), `text` gives exactly this. */
export type AmountChoice =
  | { kind: 'amount'; text: string; amountUm: number; isTrace: boolean; unit: Unit }
  | { kind: 'missing'; text: '' }

export type AmountQuestionCode =
  | 'AMOUNT_ABOVE_CAPACITY'
  | 'AMOUNT_DECIMAL_UNCLEAR'
  | 'AMOUNT_FINER_THAN_GAUGE'
  | 'AMOUNT_FRACTION_UNCLEAR'
  | 'AMOUNT_IS_A_SUM'
  | 'AMOUNT_LETTER_FOR_DIGIT'
  | 'AMOUNT_TRACE_UNCLEAR'
  | 'AMOUNT_UNIT_UNUSUAL'
  | 'AMOUNT_ZERO_OR_MISSING'

export type AmountProblemCode = 'AMOUNT_ABOVE_RECORD' | 'AMOUNT_NEGATIVE' | 'AMOUNT_TWO_POINTS' | 'AMOUNT_UNREADABLE'

/** A problem with one of several fills typed in a row, or with their sum. See sumFills.ts. */
export type FillProblemCode = 'FILLS_NONE' | 'FILL_ABOVE_TUBE' | 'FILL_NEGATIVE' | 'FILLS_ABOVE_CAPACITY'
