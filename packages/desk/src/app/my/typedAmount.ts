/** An amount typed on the phone: a number, `T`, or fills of the inner tube joined by a plus sign. */
import {
  type Amount,
  inchTube,
  metricTube,
  parseAmount,
  resolutionsUm,
  sumFills,
  type Unit,
  usualResolutionUm,
} from '@gaugewright/science'
import { type Answer, answered, refused } from '../answer.ts'

export interface TypedAmount {
  text: string
  unit: Unit
  /** Observing days that it covers. */
  dayCount: number
}

/** @param stepUm  of the gauge; null where unknown */
export function typedAmount(typed: TypedAmount, stepUm: number | null): Answer<Amount> {
  const fills = typed.text.split('+')
  const amounts: Amount[] = []
  for (const fill of fills) {
    const read = parseAmount(fill, {
      unit: typed.unit,
      decimalMark: '.',
      resolutionUm: stepFor(typed.unit, stepUm),
      dayCount: typed.dayCount,
    })
    if (read.kind !== 'amount') {
      if (read.kind === 'missing') return refused('AMOUNT_UNREADABLE', `"${typed.text}"`, 'Give a number, 0 or T.')
      return refused(read.code, read.seen, read.advice)
    }
    amounts.push({ amountUm: read.amountUm, isTrace: read.isTrace })
  }
  const only = amounts[0]
  if (amounts.length === 1 && only !== undefined) return answered(only)
  const sum = sumFills(amounts, typed.unit === 'in' ? inchTube : metricTube)
  if (sum.kind === 'problem') return refused(sum.code, sum.seen, sum.advice)
  return answered({ amountUm: sum.amountUm, isTrace: sum.isTrace })
}

/** The step in the unit that was typed: a gauge in the other unit is read by that unit's usual scale. */
function stepFor(unit: Unit, stepUm: number | null): number {
  const isInchStep = stepUm === resolutionsUm.hundredthInch
  return stepUm === null || isInchStep !== (unit === 'in') ? usualResolutionUm(unit) : stepUm
}
