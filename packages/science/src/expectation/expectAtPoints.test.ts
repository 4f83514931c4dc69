import { describe, expect, it } from 'vitest'
import { changed, firstDay, pointsAt, rainyNetwork, rowsOf } from '../../test/support/rainyNetwork.ts'
import { ScienceError } from '../error.ts'
import { judge } from '../mistakes/judge.ts'
import { learnModel } from '../model/learnModel.ts'
import { emptyDailyTable } from '../network/dailyTable.ts'
import { expectAtPoints } from './expectAtPoints.ts'
import { believingModel, evenLevels } from './expectations.ts'

const { gauges, table } = rainyNetwork(23, 24, 60)
const model = believingModel(learnModel(gauges, table))
const days = rowsOf(table, 48, 60)
const range = { fromDay: firstDay + 48, toDay: firstDay + 59, sameMorning: false }
const ask = { ...range, levels: evenLevels(9) }

describe('expectAtPoints', () => {
  it('expects rain where the gauges around had it and none where they had none', () => {
    // The west was wet, the east dry, on one day; both ends far apart for the network.
    const halves = changed(days, (_, g) => (gauges.xM[g]! < 45_000 ? 14 + g / 10 : 0))
    const got = expectAtPoints(judge(gauges, halves, model, range), pointsAt([15_000, 45_000], [78_000, 45_000]), {
      ...ask,
      toDay: ask.fromDay,
    })
    expect(got.dryChance[0]).toBeLessThan(0.05)
    expect(got.meanMm[0]).toBeGreaterThan(8)
    expect(got.dryChance[1]).toBeGreaterThan(0.8)
    expect(got.meanMm[1]).toBeLessThan(1)
  })

  it('gives a point the same figures among hundreds of others as alone', () => {
    const judgement = judge(gauges, days, model, range)
    const many = pointsAt(
      ...Array.from({ length: 530 }, (_, p) => [(p % 29) * 3_100, (p % 17) * 5_200, 100 + p] as const),
    )
    const all = expectAtPoints(judgement, many, ask)
    for (const p of [0, 511, 512, 529]) {
      const alone = expectAtPoints(judgement, pointsAt([many.xM[p]!, many.yM[p]!, many.elevationM[p]!]), ask)
      for (let d = 0; d < 12; d++) {
        expect(all.meanMm[d * 530 + p], `point ${p}, day ${d}`).toBeCloseTo(alone.meanMm[d]!, 9)
        expect(all.quantilesMm[(d * 530 + p) * 9 + 6]).toBeCloseTo(alone.quantilesMm[d * 9 + 6]!, 9)
      }
    }
  })

  it('leaves the judgement as it was', () => {
    const judgement = judge(gauges, days, model, range)
    const before = judgement.latent.cavityMean.slice()
    const used = judgement.latent.used.slice()
    expectAtPoints(judgement, pointsAt([30_000, 20_000]), ask)
    expect(judgement.latent.cavityMean).toEqual(before)
    expect(judgement.latent.used).toEqual(used)
  })

  it('of mornings sees nothing later than the day', () => {
    const later = changed(days, (amountMm, g, day) => (day > firstDay + 53 ? 3 * g : amountMm))
    const points = pointsAt([33_000, 61_000, 700], [5_000, 5_000])
    const part = { ...ask, toDay: firstDay + 53 }
    const one = expectAtPoints(judge(gauges, days, model, { ...range, sameMorning: true }), points, part)
    const other = expectAtPoints(judge(gauges, later, model, { ...range, sameMorning: true }), points, part)
    expect(other).toEqual(one)
  })

  it('falls back on the climate on days without reports, and says that no neighbour spoke', () => {
    const none = emptyDailyTable(24, days.firstDay, days.dayCount)
    const got = expectAtPoints(judge(gauges, none, model, range), pointsAt([40_000, 40_000]), ask)
    expect([...got.neighbourCount]).toEqual(new Array(12).fill(0))
    expect(got.dryChance[4]).toBeGreaterThan(0.2)
    expect(got.quantilesMm[4 * 9 + 8]).toBeGreaterThan(0)
  })

  it('needs a gauge', () => {
    const nobody = pointsAt()
    const judgement = judge(
      nobody,
      emptyDailyTable(0, firstDay, 2),
      learnModel(nobody, emptyDailyTable(0, 0, 0)),
      range,
    )
    expect(() => expectAtPoints(judgement, pointsAt([1, 2]), ask)).toThrow(ScienceError)
  })
})
