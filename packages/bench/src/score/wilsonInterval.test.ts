import { describe, expect, it } from 'vitest'
import { wilsonInterval } from './wilsonInterval.ts'

describe('wilsonInterval', () => {
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('of %i in %i is that of Newcombe 1998, table I, method 3: %f to %f', (successes, count, low, high) => {
    const interval = wilsonInterval(successes, count)
    expect(interval.low).toBeCloseTo(low, 4)
    expect(interval.high).toBeCloseTo(high, 4)
  })

  it('of k failures is the mirror image of that of k successes', () => {
    const few = wilsonInterval(3, 40)
    const many = wilsonInterval(37, 40)
    expect(many.low).toBeCloseTo(1 - few.high, 12)
    expect(many.high).toBeCloseTo(1 - few.low, 12)
  })

  it('of nothing is not known', () => {
    expect(wilsonInterval(0, 0).low).toBeNaN()
  })
})
