import { expect, it } from 'vitest'
import type { JudgedCase } from './judgedCase.ts'
import { pickCases } from './pickCases.ts'

function caseOf(day: number, standsOdds: number): JudgedCase {
  const likeliestMistakeOdds = 0.9 * (1 - standsOdds)
  const finding = {
    ...{ gauge: 0, day, reportedMm: 7, isTrace: false, spanDays: 1, canTell: true },
    ...{ standsOdds, likeliestMistake: 'decimal' as const, likeliestMistakeOdds },
    ...{ proposedMm: 70, proposedFirstDay: day, proposedLastDay: day, neighbourCount: 5 },
    expectation: { dryChance: 0, meanMm: 60, quantilesMm: [] },
  }
  return {
    ...{ gaugeId: `G${day}`, gaugeName: 'Alder Mill', unit: 'mm', typedText: '7', typedUnit: 'mm', finding },
    ...{ explanations: [], expectedSpans: [], isSnowSeason: false, daysAround: [], tailChance: 0.01, neighbours: [] },
    label: null,
  }
}

/** Forty sure cases, and two of each degree of doubt. */
const cases = [
  ...Array.from({ length: 40 }, (_, k) => caseOf(k, 0.002)),
  ...[0.05, 0.06, 0.2, 0.3, 0.5, 0.6, 0.7, 0.8].map((odds, k) => caseOf(100 + k, odds)),
]

it('picks every degree of doubt, however rare, from sure to doubtful', () => {
  const odds = pickCases(cases, 'decimal', 5, 1).map(({ finding }) => finding.standsOdds)
  expect(odds).toHaveLength(5)
  expect(odds[0]).toBeLessThan(0.01)
  expect(odds.filter((one) => one >= 0.01 && one < 0.1)).toHaveLength(1)
  expect(odds.filter((one) => one >= 0.33 && one < 0.66)).toHaveLength(1)
  expect(odds[4]).toBeGreaterThanOrEqual(0.66)
})

it('picks the same for one seed, others for another, none of another mistake', () => {
  const ids = (seed: number) => pickCases(cases, 'decimal', 5, seed).map(({ gaugeId }) => gaugeId)
  expect(ids(7)).toEqual(ids(7))
  expect(new Set([1, 2, 3, 4].map((seed) => ids(seed).join(' '))).size).toBeGreaterThan(1)
  expect(pickCases(cases, 'unit', 5, 1)).toEqual([])
})
