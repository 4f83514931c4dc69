/**
 * An amount as a file writes it, in the file's unit. Plain numbers go a quick way; all else is what parseAmount is sure of.
 * What it would ask a person about is refused here, with the question as the reason.
 */
import { parseAmount, type Unit } from '@gaugewright/science'
import type { IntakeCode } from '../ports/intakeRefusal.ts'
import { plainAmountUm } from './plainAmount.ts'

export interface AmountOfFile {
  amountUm: number
  isTrace: boolean
  /** The file's, unless another stands behind the number. */
  unit: Unit
}

export type AmountTextAnswer =
  | ({ kind: 'amount' } & AmountOfFile)
  | { kind: 'missing' }
  | { kind: 'refused'; code: IntakeCode; wanted: string; advice: string }

/** A file may hold mistakes that the review is there to find, such as a lost point: only nonsense is refused. */
const LIMIT_DAYS = 50

/** @param text trimmed, not empty. With a decimal comma, a point is refused. */
export function readAmountText(text: string, unit: Unit, decimal: 'point' | 'comma'): AmountTextAnswer {
  if (text === '0') return { kind: 'amount', amountUm: 0, isTrace: false, unit }
  if (text === 'T') return { kind: 'amount', amountUm: 0, isTrace: true, unit }
  const isOtherMark = decimal === 'comma' && text.includes('.')
  const amountUm = isOtherMark ? -1 : plainAmountUm(decimal === 'comma' ? text.replace(',', '.') : text, unit)
  if (amountUm >= 0) return { kind: 'amount', amountUm, isTrace: false, unit }
  const answer = parseAmount(text, {
    unit,
    decimalMark: decimal === 'comma' ? ',' : '.',
    finer: 'keep',
    capacityUm: null,
    dayCount: LIMIT_DAYS,
  })
  if (answer.kind === 'amount' || answer.kind === 'missing') return answer
  const example = decimal === 'comma' ? '12,4' : '12.4'
  const wanted = `a depth in ${unit} such as ${example}, T for a trace, or nothing`
  return { kind: 'refused', code: answer.code, wanted, advice: answer.advice }
}
