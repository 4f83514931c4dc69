import { describe, expect, it } from 'vitest'
import { pointsAt } from '../../test/support/rainyNetwork.ts'
import { scoreScale } from '../climate/scores.ts'
import { predictiveOf } from '../expectation/predictive.ts'
import { learnModel } from '../model/learnModel.ts'
import { emptyDailyTable } from '../network/dailyTable.ts'
import { seededRandom } from '../stats/seededRandom.ts'
import { dailyLaw } from './amountLaw.ts'
import { mistakeShare } from './rates.ts'
import { type GaugeDays, type Stretch, stretchesEndingAt, sumSequences } from './sequence.ts'
import { sourcesOf } from './sources.ts'

/** Every way to cut rows from…rows - 1 into single days and stretches, with its weight, one by one. */
function everyCut(rows: number, stretches: readonly Stretch[], from = 0): { used: number[]; weight: number }[] {
  if (from === rows) return [{ used: [], weight: 1 }]
  const cuts = everyCut(rows, stretches, from + 1)
  stretches.forEach((stretch, index) => {
    if (stretch.from !== from) return
    for (const { used, weight } of everyCut(rows, stretches, stretch.to + 1))
      cuts.push({ used: [index, ...used], weight: weight * Math.exp(stretch.logRatio) })
  })
  return cuts
}

function randomStretches(random: () => number, rows: number, count: number): Stretch[] {
  return Array.from({ length: count }, () => {
    const from = Math.floor(random() * (rows - 1))
    const to = Math.min(rows - 1, from + 1 + Math.floor(3 * random()))
    return { kind: 'carried' as const, from, to, logRatio: 6 * random() - 3 }
  })
}

describe('sumSequences', () => {
  it('agrees with adding up every way to cut the days, one by one', () => {
    const random = seededRandom(19)
    for (const [rows, count] of [
      [2, 1],
      [5, 3],
      [7, 9],
      [9, 14],
    ] as const) {
      const stretches = randomStretches(random, rows, count)
      const cuts = everyCut(rows, stretches)
      const total = cuts.reduce((sum, { weight }) => sum + weight, 0)
      const got = sumSequences(rows, stretches)
      stretches.forEach((_, index) => {
        const exact = cuts.reduce((sum, { used, weight }) => sum + (used.includes(index) ? weight : 0), 0) / total
        expect(got.stretch[index]!).toBeCloseTo(exact, 10)
      })
      for (let row = 0; row < rows; row++) {
        const covers = (index: number) => stretches[index]!.from <= row && stretches[index]!.to >= row
        const exact = cuts.reduce((sum, { used, weight }) => sum + (used.some(covers) ? 0 : weight), 0) / total
        expect(got.alone[row]!).toBeCloseTo(exact, 10)
      }
    }
  })

  it('leaves every day alone where there is no stretch', () => {
    expect([...sumSequences(3, []).alone]).toEqual([1, 1, 1])
  })

  it('holds its sums over a long record of strong stretches', () => {
    const stretches = Array.from({ length: 900 }, (_, k) => ({
      kind: 'late' as const,
      from: 3 * k,
      to: 3 * k + 1,
      logRatio: k % 2 === 0 ? 40 : -40,
    }))
    const got = sumSequences(2700, stretches)
    expect(got.stretch[200]!).toBeCloseTo(1, 9)
    expect(got.stretch[201]!).toBeCloseTo(0, 9)
    expect([got.alone[0], got.alone[2], got.alone[3]].map((p) => Math.round(p! * 1e6) / 1e6)).toEqual([0, 1, 1])
  })
})

const model = learnModel(pointsAt([0, 0]), emptyDailyTable(1, 20_300, 0))
const scale = scoreScale(model.climate, 0, 6)
const wet = predictiveOf(1.3, 0.12, 1, scale, model.spread)
const dry = predictiveOf(-1.9, 0.12, 1, scale, model.spread)
const wetMm = 9

/** A gauge that was expected wet (W) or dry (D), and what it reported, NaN for nothing; days `taken` by a declared total or settled. */
function days(expected: string, reported: readonly number[], taken: readonly number[] = []): GaugeDays {
  const predictive = (row: number) => (expected[row] === 'W' ? wet : dry)
  const rest = {
    isTrace: false,
    previousMm: Number.NaN,
    resolutionMm: 0.1,
    reader: { writtenMm: 0.1, stepsMm: [0.1], share: [1] },
    tubeMm: 25.4,
  }
  return {
    rows: reported.length,
    amountMm: (row) => reported[row]!,
    isFree: (row) => !taken.includes(row),
    predictive,
    resolutionMm: 0.1,
    reader: rest.reader,
    shares: mistakeShare,
    singleWeight: (row) =>
      Number.isNaN(reported[row]!)
        ? 1
        : sourcesOf({ ...rest, amountMm: reported[row]! }, dailyLaw(predictive(row)), model.mistakeRate).reduce(
            (sum, { weight }) => sum + weight,
            0,
          ),
    rate: model.mistakeRate,
  }
}

/** The likeliest stretch, and the chance that its last day belongs to some stretch. */
function likeliest(given: GaugeDays): { stretch: Stretch | undefined; chance: number } {
  const stretches: Stretch[] = []
  for (let row = 0; row < given.rows; row++) stretches.push(...stretchesEndingAt(given, row))
  const { stretch, alone } = sumSequences(given.rows, stretches)
  const best = stretch.reduce((at, chance, index) => (chance > stretch[at]! ? index : at), 0)
  return { stretch: stretches[best], chance: 1 - (alone[stretches[best]?.to ?? 0] ?? 1) }
}

describe('stretchesEndingAt', () => {
  it('finds rain dated a day late: zero on the wet day, its amount on the dry day after', () => {
    const { stretch, chance } = likeliest(days('DWDD', [0, 0, wetMm, 0]))
    expect(stretch).toMatchObject({ kind: 'late', from: 1, to: 2 })
    expect(chance).toBeGreaterThan(0.7)
  })

  it('finds rain dated a day early', () => {
    const { stretch, chance } = likeliest(days('DDWD', [0, wetMm, 0, 0]))
    expect(stretch).toMatchObject({ kind: 'early', from: 1, to: 2 })
    expect(chance).toBeGreaterThan(0.7)
  })

  it('finds several days in a row dated late as one stretch', () => {
    const { stretch } = likeliest(days('DWWDD', [0, 0, wetMm, wetMm + 1.7, 0]))
    expect(stretch).toMatchObject({ kind: 'late', from: 1, to: 3 })
  })

  it('finds a total carried over days reported as zero', () => {
    const { stretch, chance } = likeliest(days('DWWWD', [0, 0, 0, 3 * wetMm, 0]))
    expect(stretch).toMatchObject({ kind: 'carried', from: 1, to: 3 })
    expect(chance).toBeGreaterThan(0.7)
  })

  it('finds a silent total over days without a report', () => {
    const { stretch, chance } = likeliest(days('DWWDD', [0, Number.NaN, Number.NaN, 2 * wetMm, 0]))
    expect(stretch).toMatchObject({ kind: 'carried', from: 1, to: 3 })
    expect(chance).toBeGreaterThan(0.7)
  })

  it('sees nothing amiss where each day has what was expected', () => {
    expect(likeliest(days('DWDWW', [0, wetMm, 0, wetMm, 11])).chance).toBeLessThan(0.02)
  })

  it('lets no stretch reach over days that a declared total or a person has taken', () => {
    const given = days('DWWWD', [0, 0, 0, 3 * wetMm, 0], [2])
    for (let row = 0; row < given.rows; row++)
      for (const { from, to } of stretchesEndingAt(given, row)) expect(from <= 2 && to >= 2).toBe(false)
  })

  it('a total is of a week at most', () => {
    const reported = [...new Array(11).fill(Number.NaN), 60]
    for (const { from, to } of stretchesEndingAt(days('W'.repeat(12), reported), 11))
      expect(to - from + 1).toBeLessThan(8)
  })
})
