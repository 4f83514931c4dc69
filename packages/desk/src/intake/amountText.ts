/** An amount as a file writes it, in the file's unit: a plain number, T for trace, or whatever parseAmount is sure of. */
import type { Unit } from '@gaugewright/science'
import { plainAmountUm } from './plainAmount.ts'

export type AmountAnswer =
  | { ok: true; amountUm: number; isTrace: boolean }
  | { ok: false; code: 'AMOUNT_NOT_VALID' | 'AMOUNT_UNCLEAR'; wanted: string; advice: string }

export type DecimalMark = 'point' | 'comma'

const trace: AmountAnswer = { ok: true, amountUm: 0, isTrace: true }
const dry: AmountAnswer = { ok: true, amountUm: 0, isTrace: false }

/** @param text trimmed, not empty */
export function readAmountText(text: string, unit: Unit, decimal: DecimalMark): AmountAnswer {
  if (text === '0') return dry
  if (text === 'T') return trace
  const withPoint = decimal === 'comma' ? text.replace(',', '.') : text
  const isGroupedPoint = decimal === 'comma' && text.includes('.')
  const amountUm = isGroupedPoint ? -1 : plainAmountUm(withPoint, unit)
  if (amountUm >= 0) return { ok: true, amountUm, isTrace: false }
  const example = decimal === 'comma' ? '12,4' : '12.4'
  return {
    ok: false,
    code: 'AMOUNT_NOT_VALID',
    wanted: `a depth in ${unit} such as ${example}, T for a trace, or nothing`,
    advice: 'Mend the amount; if this text means "no reading", say so with --missing TEXT.',
  }
}
