import { describe, expect, it } from 'vitest'
import { ScienceError } from '../error.ts'
import { countQuantile, poissonBinomial } from './poissonBinomial.ts'

const eight = [0.02, 0.15, 0.004, 0.31, 0.07, 0.0009, 0.5, 0.23]

describe('poissonBinomial', () => {
  it('matches scipy.stats.poisson_binom (SciPy 1.17.1) for eight unequal chances', () => {
    const published = [
      0.20478873701438455, 0.41470561023612834, 0.28388633491030435, 0.0846852284561396, 0.011314708873320001,
      0.0006091226692044, 1.0219175039600004e-5, 3.863852760000001e-8, 2.6951400000000002e-11,
    ]
    const shares = poissonBinomial(eight)
    published.forEach((share, count) => {
      expect(shares[count]! / share).toBeCloseTo(1, 12)
    })
    expect([countQuantile(shares, 0.1), countQuantile(shares, 0.9)]).toEqual([0, 2])
  })

  it('matches the discrete Fourier transform of the characteristic function (NumPy) for 400 chances', () => {
    const chances = Float64Array.from({ length: 400 }, (_, i) => 0.0005 + (0.0295 * ((i * 37) % 101)) / 100)
    const shares = poissonBinomial(chances, 40)
    expect(shares[6]).toBeCloseTo(0.16212848070804523, 13)
    expect(shares[0]! + shares[1]! + shares[2]!).toBeCloseTo(0.05636927, 8)
    expect([0.05, 0.1, 0.9, 0.95].map((level) => countQuantile(shares, level))).toEqual([2, 3, 9, 10])
  })

  it('gives the same where the counts are enumerated one by one, certain and impossible events among them', () => {
    const chances = [0, 0.25, 1, 0.6, 0.125]
    const byHand = new Float64Array(6)
    for (let set = 0; set < 32; set++) {
      let share = 1
      let count = 0
      chances.forEach((chance, event) => {
        const happens = ((set >> event) & 1) === 1
        share *= happens ? chance : 1 - chance
        if (happens) count++
      })
      byHand[count]! += share
    }
    poissonBinomial(chances).forEach((share, count) => {
      expect(share).toBeCloseTo(byHand[count]!, 15)
    })
  })

  it('leaves out what lies above the largest count asked for, and changes nothing below it', () => {
    expect([...poissonBinomial(eight, 3)]).toEqual([...poissonBinomial(eight)].slice(0, 4))
    expect([...poissonBinomial([])]).toEqual([1])
  })

  it('refuses what is no chance', () => {
    expect(() => poissonBinomial([0.2, 1.2])).toThrow(ScienceError)
    expect(() => poissonBinomial([Number.NaN])).toThrow(/chance 0 is NaN/)
  })
})
