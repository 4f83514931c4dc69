/** Where the water stands, in words a person finds on the tube: full tubes, long lines (tenths), small lines (hundredths). */
import { formatAmount, type Language, type Unit } from '@gaugewright/science'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import { type TypedAmount, tubeOf } from './amountText.ts'

const smallUm = 254
const longUm = 2540

export function placeInGauge(amount: TypedAmount, unit: Unit, language: Language, words: MyWords): string {
  const { gauge } = words
  if (amount.isTrace) return gauge.drops
  if (amount.amountUm === 0) return gauge.empty
  const { tubeUm } = tubeOf[unit]
  const tubes = Math.floor(amount.amountUm / tubeUm)
  const restUm = amount.amountUm - tubes * tubeUm
  const rest = restUm > 0 ? lineOf(restUm, unit, language, words) : null
  if (tubes === 0) return rest ?? gauge.empty
  const full = tubes === 1 ? gauge.fullTubes.one : fill(gauge.fullTubes.many, { count: tubes })
  return rest === null ? full : fill(gauge.andMore, { tubes: full, rest })
}

function lineOf(amountUm: number, unit: Unit, language: Language, words: MyWords): string {
  const { gauge } = words
  const named = (count: number): string | undefined => gauge.ordinals[count - 1]
  if (unit === 'mm' || amountUm % smallUm !== 0) {
    return fill(gauge.line, { amount: formatAmount({ amountUm, isTrace: false }, unit, language, 'full') })
  }
  const long = Math.floor(amountUm / longUm)
  const small = Math.round((amountUm - long * longUm) / smallUm)
  if (small === 0) return fill(gauge.longLine, { nth: named(long) ?? String(long) })
  if (long === 0) return fill(gauge.smallLine, { nth: named(small) ?? String(small) })
  return fill(gauge.smallAfterLong, { small, nth: named(long) ?? String(long) })
}
