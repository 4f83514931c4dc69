import { describe, expect, it } from 'vitest'
import {
  clean,
  days,
  distanceM,
  evidenceOf,
  findingOf,
  gauges,
  judgeOneDay,
  knownMistake,
  knownMistakes,
  lastDay,
  model,
  n,
  placesFor,
  reportedMm,
  table,
  threeDaysMm,
} from '../../test/support/mistakenNetwork.ts'
import { changed, rowsOf } from '../../test/support/rainyNetwork.ts'
import { type ReportToWrite, withReports } from '../../test/support/withReports.ts'
import { noPairs } from '../expectation/correlation.ts'
import { learnModel } from '../model/learnModel.ts'
import type { Model } from '../model/model.ts'
import { evidenceAt } from './evidence.ts'
import { judge } from './judge.ts'

/** The model of a network in which every third gauge reads so late that its days lag by nearly one. */
function datingLate(): Model {
  const offsetDays = Float64Array.from({ length: n }, (_, g) => (g % 3 === 0 ? -0.875 : 0))
  return { ...model, correlation: { ...model.correlation, offsetDays, pairs: noPairs() } }
}

describe('judge', () => {
  it.each(knownMistakes)('names $name in a clean network, and proposes the truth', (put) => {
    const places = placesFor(put)
    expect(places.length).toBeGreaterThanOrEqual(4)
    const named: string[] = []
    let proposedWell = 0
    for (const [gauge, row] of places) {
      const day = table.firstDay + row + (put.judged ?? 0)
      const reports = put
        .makes(gauge, row)
        .map(([offset, amountMm]) => ({ gauge, day: table.firstDay + row + offset, amountMm }))
      const finding = findingOf(judgeOneDay(withReports(table, reports), day), gauge, day)
      if (!put.isSubtle) expect(finding.standsOdds).toBeLessThan(0.5)
      named.push(finding.likeliestMistake)
      const truthMm = put.truthMm(gauge, row)
      const isNear = Math.abs(finding.proposedMm - truthMm) <= 0.25 * truthMm + 0.4
      const hasDays = finding.proposedLastDay - finding.proposedFirstDay + 1 === (put.days ?? 1)
      if (isNear && hasDays) proposedWell++
    }
    // One place in four may look more like another mistake.
    expect(named.filter((kind) => kind === put.kind).length).toBeGreaterThanOrEqual(0.75 * places.length)
    expect(proposedWell).toBeGreaterThanOrEqual(0.75 * places.length)
  })

  it('lets nearly all of a clean network stand', () => {
    const doubtful = clean.pStands.filter((p) => p < 0.5).length
    expect(clean.count).toBe(n * days)
    expect(doubtful / clean.count).toBeLessThan(0.01)
  })

  it('sees a slipped point on the very first day of a network without any history', () => {
    const newborn = learnModel(gauges, rowsOf(table, 0, 0))
    const [gauge, row] = placesFor(knownMistake('a point one place to the right'))[2]!
    const day = table.firstDay + row
    const firstDay = withReports(rowsOf(table, row, row + 1), [{ gauge, day, amountMm: 10 * reportedMm(gauge, row) }])
    const finding = findingOf(
      judge(gauges, firstDay, newborn, { fromDay: day, toDay: day, sameMorning: true }),
      gauge,
      day,
    )
    expect(finding.standsOdds).toBeLessThan(0.5)
    expect(finding.likeliestMistake).toBe('decimal')
    expect(finding.proposedMm).toBeCloseTo(reportedMm(gauge, row), 6)
  })

  it('two wrong neighbours do not condemn a right report, nor does a third', () => {
    const nearest = (gauge: number, count: number) =>
      Array.from({ length: n }, (_, j) => j)
        .filter((j) => j !== gauge)
        .sort((a, b) => distanceM(gauge, a) - distanceM(gauge, b))
        .slice(0, count)
    for (const [gauge, row] of placesFor(knownMistake('a point one place to the right'))) {
      const day = table.firstDay + row
      for (const count of [2, 3]) {
        const wrong = nearest(gauge, count).map((j) => ({ gauge: j, day, amountMm: 0 }))
        const judgement = judgeOneDay(withReports(table, wrong), day)
        expect(findingOf(judgement, gauge, day).standsOdds).toBeGreaterThan(0.5)
      }
    }
  })

  it('a gauge without a usable neighbour says that it cannot tell, though the network goes on', () => {
    const day = table.firstDay + 60
    const others = Array.from({ length: n - 1 }, (_, g) => ({ gauge: g + 1, day, amountMm: Number.NaN }))
    const judgement = judgeOneDay(withReports(table, others), day)
    expect(judgement.count).toBe(1)
    const finding = findingOf(judgement, 0, day)
    expect([finding.canTell, finding.neighbourCount]).toEqual([false, 0])
    expect(findingOf(clean, 0, day).canTell).toBe(true)
  })

  it.each([
    ['all date their days alike', model],
    ['every third gauge dates its days late', datingLate()],
  ])('same morning uses nothing later, where %s: whatever comes later, the findings are the same', (_, by) => {
    const day = table.firstDay + 90
    const ask = { fromDay: day - 3, toDay: day, sameMorning: true }
    const before = rowsOf(table, 80, 97)
    const after = changed(before, (mm, g, at) => (at > day ? (g % 4 === 0 ? Number.NaN : 77 - g) : mm))
    const one = judge(gauges, before, by, ask)
    const other = judge(gauges, after, by, ask)
    expect(one.count).toBe(4 * n)
    for (const key of ['day', 'gauge', 'pStands', 'mistake', 'pMistake', 'proposedMm', 'neighbourCount'] as const)
      expect(other[key]).toEqual(one[key])
    for (const index of [0, 50, 4 * n - 1]) expect(evidenceAt(other, index)).toEqual(evidenceAt(one, index))
    expect(judge(gauges, after, by, { ...ask, sameMorning: false }).pStands).not.toEqual(one.pStands)
  })

  it('gives the same findings for the same input, and leaves the input as it was', () => {
    const input = structuredClone({ gauges, table: rowsOf(table, 100, 112), model })
    const ask = { fromDay: input.table.firstDay + 7, toDay: input.table.firstDay + 9, sameMorning: false }
    const copy = structuredClone(input)
    const one = judge(input.gauges, input.table, input.model, ask)
    const other = judge(input.gauges, input.table, input.model, ask)
    expect(input).toEqual(copy)
    expect(other).toEqual(one)
  })

  it('finds nothing where nobody reported, and only the days asked for', () => {
    const silent = changed(rowsOf(table, 0, 5), () => Number.NaN)
    const all = { fromDay: 0, toDay: 99_999, sameMorning: false }
    expect(judge(gauges, silent, model, all).count).toBe(0)
    const asked = judge(gauges, table, model, { ...all, fromDay: lastDay - 1, toDay: lastDay + 50 })
    expect(new Set(asked.day)).toEqual(new Set([lastDay - 1, lastDay]))
  })

  it('a trace stands where a little is likely, and is doubted in a downpour', () => {
    const little = placesFor({ where: (g, row) => reportedMm(g, row) > 0 && reportedMm(g, row) <= 0.5 })
    const downpour = placesFor({ where: (g, row) => reportedMm(g, row) > 20 })
    const oddsOfTrace = ([gauge, row]: readonly [number, number]) => {
      const day = table.firstDay + row
      const judgement = judgeOneDay(withReports(table, [{ gauge, day, amountMm: 0, isTrace: true }]), day)
      expect(findingOf(judgement, gauge, day).isTrace).toBe(true)
      return findingOf(judgement, gauge, day).standsOdds
    }
    for (const place of little.slice(0, 3)) expect(oddsOfTrace(place)).toBeGreaterThan(0.7)
    for (const place of downpour.slice(0, 3)) expect(oddsOfTrace(place)).toBeLessThan(0.5)
  })

  it('judges a declared total by its days together: the sum stands, ten times the sum does not', () => {
    for (const [gauge, row] of placesFor(knownMistake('a total carried over days reported as zero')).slice(0, 4)) {
      const day = table.firstDay + row
      const total = (amountMm: number): ReportToWrite[] => [
        { gauge, day: day - 2, amountMm: Number.NaN },
        { gauge, day: day - 1, amountMm: Number.NaN },
        { gauge, day, amountMm, spanDays: 3 },
      ]
      const right = findingOf(judgeOneDay(withReports(table, total(threeDaysMm(gauge, row))), day), gauge, day)
      expect(right.spanDays).toBe(3)
      expect(right.standsOdds).toBeGreaterThan(0.8)
      const slipped = findingOf(judgeOneDay(withReports(table, total(10 * threeDaysMm(gauge, row))), day), gauge, day)
      expect(slipped.standsOdds).toBeLessThan(0.5)
      expect(slipped.likeliestMistake).toBe('decimal')
      expect(slipped.proposedMm).toBeCloseTo(threeDaysMm(gauge, row), 6)
      expect([slipped.proposedFirstDay, slipped.proposedLastDay]).toEqual([day - 2, day])
    }
  })

  it('believes what a person has settled, and lets it speak to the neighbours', () => {
    for (const [gauge, row] of placesFor(knownMistake('a point one place to the right')).slice(0, 4)) {
      const day = table.firstDay + row
      const odd = { gauge, day, amountMm: 10 * reportedMm(gauge, row) }
      const doubted = judgeOneDay(withReports(table, [odd]), day)
      const believed = judgeOneDay(withReports(table, [{ ...odd, isSettled: true }]), day)
      expect(findingOf(doubted, gauge, day).standsOdds).toBeLessThan(0.5)
      expect(findingOf(believed, gauge, day).standsOdds).toBe(1)
      const near = evidenceOf(doubted, gauge, day).neighbours[0]!.gauge
      expect(findingOf(believed, near, day).expectation.meanMm).toBeGreaterThan(
        1.1 * findingOf(doubted, near, day).expectation.meanMm,
      )
    }
  })

  it('a settled reading leaves no odds to any mistake', () => {
    const [gauge, row] = placesFor(knownMistake('a point one place to the right'))[0]!
    const day = table.firstDay + row
    const odd = { gauge, day, amountMm: 10 * reportedMm(gauge, row), isSettled: true }
    const { finding, explanations } = evidenceOf(judgeOneDay(withReports(table, [odd]), day), gauge, day)
    expect([finding.standsOdds, finding.likeliestMistakeOdds]).toEqual([1, 0])
    expect(explanations.map(({ kind, odds }) => [kind, odds])).toEqual([['stands', 1]])
  })
})
