import { emptyDailyTable, seededRandom } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import type { TruthRow } from '../data/truth.ts'
import type { FindingArrays } from './scoreFindings.ts'
import { ruleThresholds, scoreRule } from './scoreRule.ts'

const GAUGES = 4

function findingsOf(rows: readonly { gauge: number; day: number; pStands: number }[]): FindingArrays {
  const day = Int32Array.from(rows, (row) => row.day)
  return {
    gauge: Int32Array.from(rows, (row) => row.gauge),
    day,
    pStands: Float64Array.from(rows, (row) => row.pStands),
    mistake: new Uint8Array(rows.length).fill(255),
    proposedMm: new Float64Array(rows.length).fill(Number.NaN),
    proposedFirstDay: day,
    proposedLastDay: day,
  }
}
function wrongRow(gauge: number, day: number, scored = true): TruthRow {
  return {
    event: day,
    kind: 'slip_x10',
    role: 'value',
    gauge,
    day,
    trueMm: 1,
    reportedMm: 10,
    scored,
    mistake: 'decimal',
  }
}
function against(truth: TruthRow[], days: { fromDay: number; toDay: number }) {
  const table = emptyDailyTable(GAUGES, days.fromDay, days.toDay - days.fromDay + 1)
  return { injected: table, clean: table, truth, ...days }
}
const at = (scores: ReturnType<typeof scoreRule>, letStandAt: number) =>
  scores.find((score) => score.letStandAt === letStandAt)

describe('scoreRule', () => {
  const rows = [
    { gauge: 0, day: 100, pStands: 0.99 },
    { gauge: 1, day: 100, pStands: 0.985 },
    { gauge: 2, day: 100, pStands: 0.94 },
    { gauge: 3, day: 100, pStands: 0.999 },
    { gauge: 0, day: 101, pStands: 0.2 },
    { gauge: 1, day: 101, pStands: 0.9951 },
    { gauge: 2, day: 150, pStands: 0.999 },
  ]
  const truth = [wrongRow(1, 100), wrongRow(0, 101), wrongRow(3, 100, false), wrongRow(2, 150)]
  const scores = scoreRule(findingsOf(rows), against(truth, { fromDay: 100, toDay: 140 }))

  it('by hand: days outside and changes too small to be scored are left out, a wrong one let stand is counted', () => {
    expect(scores.map((score) => score.letStandAt)).toEqual([...ruleThresholds])
    expect(at(scores, 0.98)).toMatchObject({ letStand: 3, leftShare: 2 / 5, reallyWrong: 1 })
    expect(at(scores, 0.98)?.expectedWrong).toBeCloseTo(0.01 + 0.015 + 0.0049, 12)
    expect(at(scores, 0.9)).toMatchObject({ letStand: 4, reallyWrong: 1 })
    expect(at(scores, 0.995)).toMatchObject({ letStand: 1, reallyWrong: 0, ratio: 0 })
  })

  it('of odds that mean what they say, the number that is really wrong lies about what is expected', () => {
    const random = seededRandom(42)
    const made = Array.from({ length: 20_000 }, (_, i) => ({
      gauge: i % GAUGES,
      day: 100 + Math.floor(i / GAUGES),
      pStands: 1 - 0.2 * random() ** 3,
    }))
    const labels = made.filter(({ pStands }) => random() > pStands).map(({ gauge, day }) => wrongRow(gauge, day))
    for (const { highWrong, lowWrong, ratio, reallyWrong, expectedWrong } of scoreRule(
      findingsOf(made),
      against(labels, { fromDay: 100, toDay: 9000 }),
    )) {
      expect(Math.abs(reallyWrong - expectedWrong)).toBeLessThan(4 * Math.sqrt(expectedWrong))
      expect(ratio).toBeCloseTo(reallyWrong / expectedWrong, 12)
      expect(lowWrong).toBeLessThan(highWrong)
    }
  })
})
