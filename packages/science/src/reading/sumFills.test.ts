import { describe, expect, it } from 'vitest'
import { addAmounts, sumAmounts } from './sumAmounts.ts'
import { inchTube, metricTube, sumFills } from './sumFills.ts'

const hundredths = (...fills: number[]) => fills.map((fill) => ({ amountUm: fill * 254, isTrace: false }))
const trace = { amountUm: 0, isTrace: true }
const zero = { amountUm: 0, isTrace: false }

describe('sumFills', () => {
  it('takes full tubes and a rest', () => {
    expect(sumFills(hundredths(100, 100, 37))).toEqual({ kind: 'amount', amountUm: 237 * 254, isTrace: false })
  })
  it('refuses a fill above the tube, and says which and how much', () => {
    const answer = sumFills(hundredths(100, 101, 250))
    expect(answer).toMatchObject({ kind: 'problem', code: 'FILL_ABOVE_TUBE', fillIndex: 1, seen: '1.01 in' })
    expect(answer).toHaveProperty('advice', expect.stringContaining('Fill 2: the inner tube holds 1.00 in'))
  })
  it('refuses a fill below zero', () => {
    expect(sumFills(hundredths(40, -3))).toMatchObject({ code: 'FILL_NEGATIVE', fillIndex: 1, seen: '-0.03 in' })
  })
  it('holds eleven full tubes and not a hundredth more', () => {
    const full = Array.from({ length: 11 }, () => 100)
    expect(sumFills(hundredths(...full))).toMatchObject({ kind: 'amount', amountUm: inchTube.capacityUm })
    expect(sumFills(hundredths(...full, 1))).toMatchObject({ code: 'FILLS_ABOVE_CAPACITY', seen: '11.01 in' })
  })
  it('no fill is a problem, not a zero', () => {
    expect(sumFills([])).toMatchObject({ kind: 'problem', code: 'FILLS_NONE', fillIndex: null })
  })
  it('a metric tube holds 25.0 mm, and the words follow the language', () => {
    const fills = [25_000, 25_100].map((amountUm) => ({ amountUm, isTrace: false }))
    const answer = sumFills(fills, metricTube, 'es')
    expect(answer).toMatchObject({ code: 'FILL_ABOVE_TUBE', seen: '25,1 mm' })
    expect(answer).toHaveProperty('advice', expect.stringContaining('caben 25,0 mm'))
  })
  it('throws on a fill that is not whole micrometres, a broken promise of the caller', () => {
    expect(() => sumFills([{ amountUm: 0.5, isTrace: false }])).toThrow('OUT_OF_DOMAIN')
  })
})

describe('sumAmounts', () => {
  it('T + T = T, T + 0.01 = 0.01, T + 0 = T, 0 + 0 = 0', () => {
    const hundredth = { amountUm: 254, isTrace: false }
    expect(addAmounts(trace, trace)).toEqual(trace)
    expect(addAmounts(trace, hundredth)).toEqual(hundredth)
    expect(addAmounts(hundredth, trace)).toEqual(hundredth)
    expect(addAmounts(trace, zero)).toEqual(trace)
    expect(addAmounts(zero, zero)).toEqual(zero)
  })
  it('of one trace is a trace, of nothing is null and not zero', () => {
    expect(sumAmounts([trace])).toEqual(trace)
    expect(sumAmounts([])).toBeNull()
  })
})
