import { describe, expect, it } from 'vitest'
import { changed, rainyNetwork, rowsOf } from '../../test/support/rainyNetwork.ts'
import { learnClimate } from '../climate/learnClimate.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import { seededRandom } from '../stats/seededRandom.ts'
import { correlationByDistance, correlationOf } from './correlation.ts'
import { learnCorrelation, usualCorrelation } from './learnCorrelation.ts'

const n = 24
const { gauges, table } = rainyNetwork(41, n, 260)
const learned = (history: DailyTable) => learnCorrelation(gauges, learnClimate(gauges, history), history)
const plain = learned(table)

/** A gauge that reports on each day what it caught `days` later by the network's dates. */
const datedEarly = (gauge: number, days: number) =>
  changed(table, (mm, g, day) => (g === gauge ? (table.amountMm[(day + days - table.firstDay) * n + g] ?? 0) : mm))

describe('learnCorrelation', () => {
  it('takes usual values where the history is short', () => {
    expect(learned(rowsOf(table, 0, 20))).toEqual(usualCorrelation(n))
  })

  it('finds no offset where all date their days alike', () => {
    expect([...plain.offsetDays]).toEqual(new Array(n).fill(0))
  })

  it('finds the gauge that dates rain a day early or late, and by about how much; the others keep their days', () => {
    for (const [gauge, days] of [
      [5, 1],
      [16, -1],
    ] as const) {
      const { offsetDays } = learned(datedEarly(gauge, days))
      offsetDays.forEach((offset, g) => {
        expect(Math.abs(offset - (g === gauge ? days : 0))).toBeLessThan(0.3)
      })
    }
  })

  it('lets the reports of an early gauge go with those of the next day', () => {
    const correlation = learned(datedEarly(5, 1))
    const [sameDay, nextDay] = [0, 1].map((lag) => correlationOf(correlation, gauges, 5, 9, lag))
    expect(nextDay!).toBeGreaterThan(2 * sameDay!)
  })

  it('finds that rain which lasts over days is alike from day to day, and that independent days are not', () => {
    const lasting = changed(table, (_, g, day) => {
      const row = day - table.firstDay
      return table.amountMm[(row - (row % 2)) * n + g]!
    })
    expect(plain.persistence).toBeLessThan(0.08)
    expect(learned(lasting).persistence).toBeGreaterThan(0.2)
  })

  it('learns that near gauges are more alike than far ones, all shares being valid', () => {
    expect(correlationByDistance(plain, 2_000)).toBeGreaterThan(correlationByDistance(plain, 70_000) + 0.2)
    for (const share of [plain.shortShare, plain.longShare, plain.plateau]) expect(share).toBeGreaterThanOrEqual(0)
    expect(correlationByDistance(plain, 0)).toBeLessThan(1)
  })

  it('gives a gauge whose reports are half made up a lower fit than any other', () => {
    const random = seededRandom(7)
    const noisy = learned(
      changed(table, (mm, g) => (g === 11 && random() < 0.5 ? Math.round(160 * random() ** 3) / 10 : mm)),
    )
    const others = noisy.fit.filter((_, g) => g !== 11)
    expect(noisy.fit[11]!).toBeLessThan(Math.min(...others) - 0.05)
  })

  it('keeps what pairs have in common: nothing above what two gauges can share', () => {
    expect(plain.pairs.i.length).toBeGreaterThan(n)
    for (let p = 0; p < plain.pairs.i.length; p++) expect(plain.pairs.i[p]!).toBeLessThan(plain.pairs.j[p]!)
    for (const value of plain.pairs.byLag) expect(Math.abs(value)).toBeLessThan(1)
  })
})
