import { describe, expect, it } from 'vitest'
import { normalDeviates, seededRandom, xoshiro128 } from './seededRandom.ts'

describe('seededRandom', () => {
  it('xoshiro128 from the state 1, 2, 3, 4 starts 11520, 0, 5927040, 70819200 (the values its published form gives)', () => {
    const random = xoshiro128(1, 2, 3, 4)
    const first = [random(), random(), random(), random()].map((share) => share * 4294967296)
    expect(first).toEqual([11520, 0, 5927040, 70819200])
  })

  it('repeats itself for the same seed and differs for another', () => {
    const a = seededRandom(17)
    const b = seededRandom(17)
    const c = seededRandom(18)
    const from = (random: () => number): number[] => Array.from({ length: 5 }, () => random())
    const first = from(a)
    expect(from(b)).toEqual(first)
    expect(from(c)).not.toEqual(first)
  })

  it('spreads evenly: mean, variance and tenths of 100,000 within five standard errors', () => {
    const random = seededRandom(5)
    const tenths = new Array<number>(10).fill(0)
    let sum = 0
    const n = 100_000
    for (let k = 0; k < n; k++) {
      const u = random()
      sum += u
      tenths[Math.floor(u * 10)]!++
    }
    expect(Math.abs(sum / n - 0.5)).toBeLessThan(5 * Math.sqrt(1 / 12 / n))
    for (const count of tenths) expect(Math.abs(count - n / 10)).toBeLessThan(5 * Math.sqrt(n * 0.09))
  })

  it('normal deviates have mean 0, variance 1 and kurtosis 3 within five standard errors', () => {
    const deviate = normalDeviates(seededRandom(8))
    const n = 100_000
    let sum = 0
    let squares = 0
    let fourth = 0
    for (let k = 0; k < n; k++) {
      const z = deviate()
      sum += z
      squares += z * z
      fourth += z ** 4
    }
    expect(Math.abs(sum / n)).toBeLessThan(5 / Math.sqrt(n))
    expect(Math.abs(squares / n - 1)).toBeLessThan(5 * Math.sqrt(2 / n))
    expect(Math.abs(fourth / n - 3)).toBeLessThan(5 * Math.sqrt(96 / n))
  })
})
