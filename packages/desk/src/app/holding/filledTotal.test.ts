import { describe, expect, it } from 'vitest'
import { filledTotal } from './filledTotal.ts'

const days = (covered: number, missing: number) => [...Array(covered).fill(true), ...Array(missing).fill(false)]

describe('filledTotal', () => {
  it('leaves a whole record as it is', () => {
    expect(filledTotal({ totalMm: 42.5, isCovered: days(30, 0) }, Array(30).fill(1.3))).toBeCloseTo(42.5, 12)
  })

  it('fills a gap by the ratio of the gauge to the others', () => {
    // 27 days on which it had twice the mean of 1 mm, then 3 days without a reading and a mean of 4 mm: 54 + 2 x 12.
    const mean = [...Array(27).fill(1), 4, 4, 4]
    expect(filledTotal({ totalMm: 54, isCovered: days(27, 3) }, mean)).toBeCloseTo(78, 12)
  })

  it('takes a dry gap for nothing, and a day that nobody read too', () => {
    const mean = [...Array(27).fill(1), 0, 0, Number.NaN]
    expect(filledTotal({ totalMm: 30, isCovered: days(27, 3) }, mean)).toBeCloseTo(30, 12)
  })

  it('says nothing where a tenth is missing or more, or where the ratio cannot be told', () => {
    expect(filledTotal({ totalMm: 30, isCovered: days(26, 4) }, Array(30).fill(1))).toBeNull()
    expect(filledTotal({ totalMm: 0, isCovered: days(27, 3) }, [...Array(27).fill(0), 4, 4, 4])).toBeNull()
    expect(filledTotal({ totalMm: 0, isCovered: [] }, [])).toBeNull()
  })
})
