import { emptyDailyTable, type Mistake, mistakes } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import type { TruthRow } from '../data/truth.ts'
import { type FindingArrays, isNear, scoreFindings } from './scoreFindings.ts'

/** Two gauges over 100 days from day 1000; gauge 0 has mistakes on some days, gauge 1 has none. */
function smallCase() {
  const clean = emptyDailyTable(2, 1000, 100)
  for (let cell = 0; cell < 200; cell++) {
    clean.amountMm[cell] = (cell * 7) % 13
    clean.spanDays[cell] = 1
  }
  const injected = emptyDailyTable(2, 1000, 100)
  injected.amountMm.set(clean.amountMm)
  const truth: TruthRow[] = []
  const put = (day: number, kind: string, mistake: Mistake, reportedMm: number, scored = true) => {
    const cell = (day - 1000) * 2
    truth.push({
      event: day,
      kind,
      role: 'value',
      gauge: 0,
      day,
      trueMm: clean.amountMm[cell]!,
      reportedMm,
      scored,
      mistake,
    })
    injected.amountMm[cell] = reportedMm
  }
  put(1010, 'slip_x10', 'decimal', 90)
  put(1020, 'run_as_total', 'carried', 25)
  put(1030, 'false_zero', 'false-zero', 0)
  put(1040, 'false_zero', 'false-zero', 0)
  put(1050, 'slip_x10', 'decimal', 0.2, false)
  put(1019, 'run_as_total', 'carried', Number.NaN, false)
  return { clean, injected, truth, fromDay: 1000, toDay: 1099 }
}

function findingsOf(
  rows: { gauge: number; day: number; pStands: number; mistake: Mistake; mm?: number; from?: number; to?: number }[],
): FindingArrays {
  return {
    gauge: Int32Array.from(rows, (row) => row.gauge),
    day: Int32Array.from(rows, (row) => row.day),
    pStands: Float64Array.from(rows, (row) => row.pStands),
    mistake: Uint8Array.from(rows, (row) => mistakes.indexOf(row.mistake)),
    proposedMm: Float64Array.from(rows, (row) => row.mm ?? Number.NaN),
    proposedFirstDay: Int32Array.from(rows, (row) => row.from ?? row.day),
    proposedLastDay: Int32Array.from(rows, (row) => row.to ?? row.day),
  }
}

describe('scoreFindings', () => {
  const against = smallCase()
  const trueMm = (day: number): number => against.clean.amountMm[(day - 1000) * 2]!
  const rows = [
    { gauge: 0, day: 1010, pStands: 0.05, mistake: 'decimal' as const, mm: trueMm(1010) + 0.9 },
    {
      gauge: 0,
      day: 1020,
      pStands: 0.2,
      mistake: 'carried' as const,
      mm: trueMm(1018) + trueMm(1019) + trueMm(1020),
      from: 1018,
      to: 1020,
    },
    { gauge: 0, day: 1030, pStands: 0.3, mistake: 'decimal' as const, mm: 0 },
    { gauge: 1, day: 1060, pStands: 0.1, mistake: 'wetted' as const, mm: 0 },
    { gauge: 1, day: 1061, pStands: 0.95, mistake: 'wetted' as const, mm: 0 },
  ]
  const scores = scoreFindings(findingsOf(rows), against)

  it('counts 200 cells less 5 changed and 1 left out as good or wrong, and the unscored change as neither', () => {
    expect(scores.wrongCount).toBe(4)
    expect(scores.goodCount).toBe(194)
    expect(scores.unjudgedCount).toBe(199 - 5)
  })

  it('finds, at one false alarm in 194, three of four mistakes', () => {
    expect(scores.limitPStands).toBeCloseTo(0.95, 12)
    expect(scores.recallAt1).toBeCloseTo(3 / 4, 12)
  })

  it('has the area computed by hand: 1/4 (1 + 2/3 + 3/4) + 1/4 x 4/198', () => {
    expect(scores.area).toBeCloseTo((1 + 2 / 3 + 3 / 4) / 4 + 4 / 198 / 4, 12)
  })

  it('names two of the three found, and both amounts are near, one as a sum over three days', () => {
    expect(scores.namedRightShare).toBeCloseTo(2 / 3, 12)
    expect(scores.amountRightShare).toBe(1)
    expect(scores.kinds.find((kind) => kind.kind === 'false_zero')).toMatchObject({
      count: 2,
      found: 1,
      namedRight: 0,
      calledInstead: { decimal: 1 },
    })
  })

  it('puts readings into bins by their odds of standing', () => {
    expect(scores.calibration[0]).toMatchObject({ count: 1, standShare: 0 })
    expect(scores.calibration[1]).toMatchObject({ count: 3, standShare: 1 / 3 })
    expect(scores.calibration[1]?.meanPStands).toBeCloseTo(0.2, 12)
    expect(scores.calibration.reduce((sum, bin) => sum + bin.count, 0)).toBe(198)
  })

  it('lists the strongest good days first', () => {
    expect(scores.strongestGood).toHaveLength(20)
    expect(scores.strongestGood[0]).toMatchObject({ gauge: 1, day: 1060, mistake: 'wetted' })
    expect(scores.strongestGood[1]).toMatchObject({ gauge: 1, day: 1061 })
  })

  it('sees only the days asked for', () => {
    expect(scoreFindings(findingsOf(rows), { ...against, fromDay: 1025, toDay: 1045 }).wrongCount).toBe(2)
  })
})

describe('isNear', () => {
  it('allows 1 mm for small amounts and 20 % for large ones, and nothing where an amount is unknown', () => {
    expect(isNear(3, 2)).toBe(true)
    expect(isNear(3.2, 2)).toBe(false)
    expect(isNear(81, 100)).toBe(true)
    expect(isNear(79, 100)).toBe(false)
    expect(isNear(Number.NaN, 1)).toBe(false)
    expect(isNear(1, Number.NaN)).toBe(false)
  })
})
