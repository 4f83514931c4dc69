import { parseAmount } from '@gaugewright/science'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { plainAmountUm } from '../../src/intake/plainAmount.ts'

it('the quick path gives what parseAmount gives, wherever parseAmount gives an amount', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 999 }),
      fc.integer({ min: 0, max: 3 }),
      fc.integer({ min: 0, max: 999 }),
      fc.constantFrom('mm' as const, 'in' as const),
      (whole, decimals, fraction, unit) => {
        const text = decimals === 0 ? `${whole}` : `${whole}.${String(fraction).padStart(3, '0').slice(0, decimals)}`
        const answer = parseAmount(text, { unit, decimalMark: '.', finer: 'keep', capacityUm: null, dayCount: 50 })
        fc.pre(answer.kind === 'amount')
        expect({ kind: 'amount', amountUm: plainAmountUm(text, unit), isTrace: false, unit }).toEqual(answer)
      },
    ),
    { seed: 42, numRuns: 500 },
  )
})
