import { describe, expect, it } from 'vitest'
import { pointsAt } from '../../test/support/rainyNetwork.ts'
import { amountOfScore, scoreOfAmount, scoreScale } from '../climate/scores.ts'
import { learnModel } from '../model/learnModel.ts'
import { emptyDailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { normalPdf } from '../stats/normalCdf.ts'
import { correlationOf } from './correlation.ts'
import { type LatentTable, openLatentTable } from './latentTable.ts'
import { buildNeighbourhood } from './neighbourhood.ts'
import { computeCavity, type SweepAsk, sweepDay } from './sweepDay.ts'

const day = 20_300
const sweep: SweepAsk = { most: 32, latestRow: 0, damping: 1 }

/** One day of reports (mm, NaN for none), every report fully believed, swept until it rests. */
function settled(gauges: GaugeSet, amountsMm: readonly number[], believed: readonly number[] = []): LatentTable {
  const n = gauges.ids.length
  const model = learnModel(gauges, emptyDailyTable(n, day, 0))
  const table = emptyDailyTable(n, day, 1)
  amountsMm.forEach((mm, g) => {
    table.amountMm[g] = mm
    table.spanDays[g] = Number.isNaN(mm) ? 0 : 1
  })
  const latent = openLatentTable(table, model)
  for (let g = 0; g < n; g++) latent.stands[g] = believed[g] ?? 1
  const hood = buildNeighbourhood(gauges, model.correlation, n + 4)
  for (let pass = 0; pass < 25; pass++) sweepDay(latent, hood, 0, sweep)
  for (let g = 0; g < n; g++) computeCavity(latent, hood, 0, g, sweep)
  return latent
}

/** Mean and variance of a normal value with unit variance given others without error: the textbook conditional normal. */
function conditionalNormal(among: number[][], withTarget: number[], values: number[]) {
  const k = values.length
  const rows = among.map((row, a) => [...row, withTarget[a]!, values[a]!])
  for (let a = 0; a < k; a++) {
    for (let b = 0; b < k; b++) {
      if (a === b) continue
      const f = rows[b]![a]! / rows[a]![a]!
      for (let c = a; c < k + 2; c++) rows[b]![c]! -= f * rows[a]![c]!
    }
  }
  let mean = 0
  let explained = 0
  for (let a = 0; a < k; a++) {
    mean += (withTarget[a]! * rows[a]![k + 1]!) / rows[a]![a]!
    explained += (withTarget[a]! * rows[a]![k]!) / rows[a]![a]!
  }
  return { mean, variance: 1 - explained }
}

describe('sweepDay', () => {
  it('on a fully observed wet day gives each gauge the exact conditional normal of all others (simple kriging)', () => {
    const gauges = pointsAt(
      [0, 0],
      [9_000, 2_000],
      [21_000, -14_000],
      [-30_000, 17_000],
      [4_000, 40_000],
      [60_000, 9_000],
    )
    const amountsMm = [14.2, 21.7, 9.9, 30.4, 12.6, 26.1]
    const { model, ...latent } = settled(gauges, amountsMm)
    const score = amountsMm.map((mm, g) => scoreOfAmount(scoreScale(model.climate, g, latent.monthOfDay[0]!), mm))
    const rho = (i: number, j: number) => (i === j ? 1 : correlationOf(model.correlation, gauges, i, j, 0))
    for (let g = 0; g < 6; g++) {
      const others = [0, 1, 2, 3, 4, 5].filter((j) => j !== g)
      const exact = conditionalNormal(
        others.map((i) => others.map((j) => rho(i, j))),
        others.map((j) => rho(g, j)),
        others.map((j) => score[j]!),
      )
      expect(latent.used[g]).toBe(5)
      expect(latent.cavityMean[g]!).toBeCloseTo(exact.mean, 2)
      expect(latent.cavityVariance[g]!).toBeCloseTo(exact.variance, 2)
    }
  })

  it('gives the same where some gauges between are silent, whatever their number', () => {
    const gauges = pointsAt(
      [0, 0],
      [9_000, 2_000],
      [21_000, -14_000],
      [-30_000, 17_000],
      [4_000, 40_000],
      [60_000, 9_000],
      [-12_000, -33_000],
      [35_000, 28_000],
    )
    const caught = [14.2, 21.7, 9.9, 30.4, 12.6, 26.1, 17.3, 23.8]
    for (const silent of [[1], [1, 4], [2, 3, 6], [1, 3, 5, 7]]) {
      const amountsMm = caught.map((mm, g) => (silent.includes(g) ? Number.NaN : mm))
      const { model, ...latent } = settled(gauges, amountsMm)
      const rho = (i: number, j: number) => (i === j ? 1 : correlationOf(model.correlation, gauges, i, j, 0))
      const scale = scoreScale(model.climate, 0, latent.monthOfDay[0]!)
      const others = amountsMm.flatMap((mm, g) => (g === 0 || Number.isNaN(mm) ? [] : [g]))
      const exact = conditionalNormal(
        others.map((i) => others.map((j) => rho(i, j))),
        others.map((j) => rho(0, j)),
        others.map((j) => scoreOfAmount(scale, amountsMm[j]!)),
      )
      expect(latent.used[0]).toBe(others.length)
      expect(latent.cavityMean[0]!).toBeCloseTo(exact.mean, 2)
      expect(latent.cavityVariance[0]!).toBeCloseTo(exact.variance, 2)
    }
  })

  it('beside one dry gauge is what a truncated normal says: known below the threshold, nothing more', () => {
    const gauges = pointsAt([0, 0], [6_000, 8_000])
    const latent = settled(gauges, [Number.NaN, 0])
    const threshold = latent.high[1]!
    let share = 0
    let sum = 0
    let squares = 0
    for (let z = threshold - 0.0005; z > -9; z -= 0.001) {
      share += normalPdf(z)
      sum += z * normalPdf(z)
      squares += z * z * normalPdf(z)
    }
    const rho = correlationOf(latent.model.correlation, gauges, 0, 1, 0)
    const mean = sum / share
    expect(latent.cavityMean[0]!).toBeCloseTo(rho * mean, 3)
    expect(latent.cavityVariance[0]!).toBeCloseTo(1 - rho * rho * (1 - (squares / share - mean * mean)), 3)
  })

  it('between a dry and a wet gauge comes close to the exact posterior (checked by integration)', () => {
    const gauges = pointsAt([0, 0], [8_000, 3_000], [-5_000, 12_000])
    const latent = settled(gauges, [Number.NaN, 0, 8.4])
    const rho = (i: number, j: number) => correlationOf(latent.model.correlation, gauges, i, j, 0)
    const wet = 0.5 * (latent.low[2]! + latent.high[2]!)
    // Given the wet score, the dry gauge's is normal, cut at its threshold; the target follows from both.
    const dryMean = rho(1, 2) * wet
    const drySd = Math.sqrt(1 - rho(1, 2) ** 2)
    let share = 0
    let first = 0
    let second = 0
    for (let z = latent.high[1]! - 0.0005; z > -9; z -= 0.001) {
      const weight = normalPdf((z - dryMean) / drySd)
      const given = conditionalNormal(
        [
          [1, rho(1, 2)],
          [rho(1, 2), 1],
        ],
        [rho(0, 1), rho(0, 2)],
        [z, wet],
      )
      share += weight
      first += weight * given.mean
      second += weight * (given.mean ** 2 + given.variance)
    }
    expect(latent.cavityMean[0]!).toBeCloseTo(first / share, 1)
    expect(latent.cavityVariance[0]!).toBeCloseTo(second / share - (first / share) ** 2, 1)
  })

  it('a doubted neighbour counts less, one not believed at all not at all', () => {
    const gauges = pointsAt([0, 0], [5_000, 1_000], [-9_000, 13_000])
    const amountsMm = [Number.NaN, 55, 2.5]
    const meansByDoubt = [1, 0.9, 0.5, 0.1, 0].map(
      (believed) => settled(gauges, amountsMm, [1, believed, 1]).cavityMean[0]!,
    )
    for (let k = 1; k < meansByDoubt.length; k++) expect(meansByDoubt[k]!).toBeLessThan(meansByDoubt[k - 1]!)
    const without = settled(gauges, [Number.NaN, Number.NaN, 2.5])
    expect(meansByDoubt[4]!).toBeCloseTo(without.cavityMean[0]!, 4)
  })

  it('a gauge without any neighbour keeps its climate: mean 0, variance 1, nothing used', () => {
    const latent = settled(pointsAt([0, 0], [5_000, 1_000]), [12, Number.NaN])
    expect([latent.cavityMean[0], latent.cavityVariance[0], latent.used[0]]).toEqual([0, 1, 0])
  })

  it('its own report has no part in what is said of a gauge', () => {
    const gauges = pointsAt([0, 0], [5_000, 1_000], [-9_000, 13_000])
    const cavities = [0, 0.4, 90].map((mm) => {
      const model = learnModel(gauges, emptyDailyTable(3, day, 0))
      const table = emptyDailyTable(3, day, 1)
      table.amountMm.set([mm, 6.1, 3.2])
      table.spanDays.fill(1)
      const latent = openLatentTable(table, model)
      computeCavity(latent, buildNeighbourhood(gauges, model.correlation, 8), 0, 0, sweep)
      return latent.cavityMean[0]
    })
    expect(new Set(cavities).size).toBe(1)
  })

  it('uses no more reports than asked, and none of a later day than allowed', () => {
    const gauges = pointsAt([0, 0], [5_000, 1_000], [-9_000, 13_000], [2_000, 30_000])
    const model = learnModel(gauges, emptyDailyTable(4, day, 0))
    model.correlation.offsetDays[0] = -1
    const table = emptyDailyTable(4, day, 3)
    table.amountMm.set([7, 8, 9, 10, 4, 3, 2, 5, 0, 0, 1, 0])
    table.spanDays.fill(1)
    const hood = buildNeighbourhood(gauges, model.correlation, 12)
    const usedWith = (row: number, gauge: number, ask: SweepAsk) => {
      const latent = openLatentTable(table, model)
      computeCavity(latent, hood, row, gauge, ask)
      return latent.used[row * 4 + gauge]!
    }
    expect(usedWith(1, 1, { ...sweep, latestRow: 2, most: 2 })).toBe(2)
    // Gauge 0 dates late: gauge 1 is told by its report of the day after.
    const [today, withTomorrow] = [1, 2].map((latestRow) => usedWith(1, 1, { ...sweep, latestRow }))
    expect(withTomorrow!).toBeGreaterThan(today!)
  })

  it('the score of what is expected goes back to an amount between those around', () => {
    const gauges = pointsAt([0, 0], [5_000, 1_000], [-5_000, -1_000])
    const latent = settled(gauges, [Number.NaN, 10, 20])
    const scale = scoreScale(latent.model.climate, 0, latent.monthOfDay[0]!)
    const expectedMm = amountOfScore(scale, latent.cavityMean[0]!)
    expect(expectedMm).toBeGreaterThan(8)
    expect(expectedMm).toBeLessThan(20)
  })
})
