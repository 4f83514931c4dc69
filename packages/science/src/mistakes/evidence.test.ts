import { describe, expect, it } from 'vitest'
import {
  clean,
  distanceM,
  evidenceOf,
  gauges,
  judgeOneDay,
  knownMistake,
  lastDay,
  model,
  n,
  placesFor,
  reportedMm,
  table,
  threeDaysMm,
} from '../../test/support/mistakenNetwork.ts'
import { withReports } from '../../test/support/withReports.ts'
import { findingIndex } from './evidence.ts'
import { judge } from './judge.ts'

describe('evidenceAt', () => {
  const [gauge, row] = placesFor(knownMistake('a point one place to the right'))[1]!
  const day = table.firstDay + row
  const given = withReports(table, [{ gauge, day, amountMm: 10 * reportedMm(gauge, row) }])
  const evidence = evidenceOf(judgeOneDay(given, day), gauge, day)

  it('lists the likeliest explanation first, the same that the finding names, with how the point slipped', () => {
    const best = evidence.explanations[0]!
    expect(best.kind).toBe(evidence.finding.likeliestMistake)
    expect(best.odds).toBeCloseTo(evidence.finding.likeliestMistakeOdds, 9)
    expect(best.detail).toEqual({ kind: 'decimal', places: 1 })
    expect(best.impliedP10Mm).toBeLessThanOrEqual(best.impliedMm)
    expect(best.impliedMm).toBeLessThanOrEqual(best.impliedP90Mm)
    expect(evidence.tail).toBe('high')
    expect(evidence.tailChance).toBeLessThan(0.01)
  })

  it('names neighbours with shares that sum to 1, the heaviest first, at their true distances', () => {
    const { neighbours } = evidence
    expect(neighbours.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9)
    neighbours.forEach((neighbour, k) => {
      if (k > 0) expect(neighbour.weight).toBeLessThanOrEqual(neighbours[k - 1]!.weight)
      expect(neighbour.distanceM).toBeCloseTo(distanceM(gauge, neighbour.gauge), 6)
      expect(neighbour.amountMm).toBe(given.amountMm[(neighbour.day - table.firstDay) * n + neighbour.gauge])
      expect(neighbour.gauge).not.toBe(gauge)
    })
  })

  it('shows the days around it as they were reported', () => {
    const { daysAround } = evidence
    expect(daysAround.map((one) => one.day)).toEqual([-4, -3, -2, -1, 0, 1, 2].map((off) => day + off))
    for (const one of daysAround) {
      expect(one.reportedMm).toBe(given.amountMm[(one.day - table.firstDay) * n + gauge])
      expect(one.expectedP10Mm).toBeLessThanOrEqual(one.expectedP50Mm)
      expect(one.expectedP50Mm).toBeLessThanOrEqual(one.expectedP90Mm)
    }
  })

  it('of a slipped day names the other day and what was reported there', () => {
    const [slipped, at] = placesFor(knownMistake('rain dated a day late, the day it is dated'))[0]!
    const fell = table.firstDay + at
    const late = withReports(table, [
      { gauge: slipped, day: fell, amountMm: 0 },
      { gauge: slipped, day: fell + 1, amountMm: reportedMm(slipped, at) },
    ])
    const { explanations } = evidenceOf(judgeOneDay(late, fell), slipped, fell)
    expect(explanations.find(({ kind }) => kind === 'day')!.detail).toEqual({
      kind: 'day',
      otherDay: fell + 1,
      otherReportedMm: reportedMm(slipped, at),
    })
  })

  it('of a gauge whose days are a habit lets that part stand, all odds still summing to 1', () => {
    const [slipped, at] = placesFor(knownMistake('rain dated a day late, the day it is dated'))[0]!
    const fell = table.firstDay + at
    const late = withReports(table, [
      { gauge: slipped, day: fell, amountMm: 0 },
      { gauge: slipped, day: fell + 1, amountMm: reportedMm(slipped, at) },
    ])
    const oddsBy = (slipShare: number) => {
      const by = { ...model, slipShare: model.slipShare.map((share, g) => (g === slipped ? slipShare : share)) }
      const ask = { fromDay: fell, toDay: fell, sameMorning: false }
      const { explanations, finding } = evidenceOf(judge(gauges, late, by, ask), slipped, fell)
      const oddsOf = (kind: string) => explanations.find((one) => one.kind === kind)?.odds ?? 0
      expect(explanations.reduce((sum, { odds }) => sum + odds, 0)).toBeCloseTo(1, 3)
      expect(oddsOf('stands')).toBeCloseTo(finding.standsOdds, 6)
      return { day: oddsOf('day'), stands: oddsOf('stands') }
    }
    const [slip, habit] = [oddsBy(1), oddsBy(0.2)]
    expect(habit.day / slip.day).toBeCloseTo(0.2, 6)
    expect(habit.stands).toBeGreaterThan(slip.stands + 0.5 * slip.day)
  })

  it('of a carried total names its last day, its amount and its days', () => {
    const [carrier, at] = placesFor(knownMistake('a total carried over days reported as zero'))[0]!
    const end = table.firstDay + at
    const carried = withReports(table, [
      { gauge: carrier, day: end - 2, amountMm: 0 },
      { gauge: carrier, day: end - 1, amountMm: 0 },
      { gauge: carrier, day: end, amountMm: threeDaysMm(carrier, at) },
    ])
    const { explanations } = evidenceOf(judgeOneDay(carried, end - 1), carrier, end - 1)
    const one = explanations.find(({ kind }) => kind === 'carried')!
    expect(one.detail).toEqual({ kind: 'carried', endsOn: end, totalMm: threeDaysMm(carrier, at), dayCount: 3 })
    expect([one.firstDay, one.lastDay]).toEqual([end - 2, end])
  })
})

describe('findingIndex', () => {
  it('is -1 where a gauge did not report', () => {
    expect(findingIndex(clean, 3, lastDay + 1)).toBe(-1)
    expect(clean.gauge[findingIndex(clean, 3, lastDay)]).toBe(3)
  })
})
