import { describe, expect, it } from 'vitest'
import { changed, rainyNetwork, rowsOf } from '../../test/support/rainyNetwork.ts'
import { type ReportToWrite, withReports } from '../../test/support/withReports.ts'
import { amountQuantile, predictiveAt } from '../expectation/predictive.ts'
import { learnModel } from '../model/learnModel.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import { evidenceAt, findingAt, findingIndex } from './evidence.ts'
import type { Evidence, Finding } from './finding.ts'
import { judge } from './judge.ts'
import type { Judgement } from './judgement.ts'
import type { Mistake } from './mistake.ts'

const n = 30
const days = 140
const { gauges, table } = rainyNetwork(5, n, days)
const model = learnModel(gauges, rowsOf(table, 0, 120))
const lastDay = table.firstDay + days - 1
const clean = judge(gauges, table, model, { fromDay: table.firstDay, toDay: lastDay, sameMorning: false })

function tenths(mm: number): number {
  return Math.round(10 * mm) / 10
}

function reportedMm(gauge: number, row: number): number {
  return table.amountMm[row * n + gauge]!
}

function expectedMm(gauge: number, row: number, level = 0.5): number {
  return amountQuantile(predictiveAt(clean.latent, row, gauge), level)
}

/** The true amount is what the neighbours expect: between the quartiles. */
function isTypical(gauge: number, row: number): boolean {
  const mm = reportedMm(gauge, row)
  return mm >= expectedMm(gauge, row, 0.25) && mm <= expectedMm(gauge, row, 0.75)
}

/** Dry, and expected to be. */
function isSurelyDry(gauge: number, row: number): boolean {
  return reportedMm(gauge, row) === 0 && expectedMm(gauge, row, 0.97) === 0
}

function judgeOneDay(given: DailyTable, day: number, sameMorning = false): Judgement {
  const row = day - given.firstDay
  const around = rowsOf(given, Math.max(0, row - 7), Math.min(given.dayCount, row + 3))
  for (let i = 0; i < around.amountMm.length; i++) {
    const from = i + Math.max(0, row - 7) * given.gaugeCount
    around.isTrace[i] = given.isTrace[from]!
    around.settled[i] = given.settled[from]!
  }
  return judge(gauges, around, model, { fromDay: day, toDay: day, sameMorning })
}

function findingOf(judgement: Judgement, gauge: number, day: number): Finding {
  return findingAt(judgement, findingIndex(judgement, gauge, day))
}

function evidenceOf(judgement: Judgement, gauge: number, day: number): Evidence {
  return evidenceAt(judgement, findingIndex(judgement, gauge, day))
}

interface Put {
  name: string
  kind: Mistake
  /** True amounts for which the mistake can be told, besides being typical. */
  where: (gauge: number, row: number) => boolean
  /** The reports that the mistake makes: row offset and mm. */
  makes: (gauge: number, row: number) => [offset: number, mm: number][]
  /** Row offset of the report judged. */
  judged?: number
  /** What the judged report stands for in truth, over how many days. */
  truthMm: (gauge: number, row: number) => number
  days?: number
  /** May well be true: named first among the mistakes, but not held to be likelier than not. */
  isSubtle?: boolean
}

const three = (g: number, row: number) => tenths(reportedMm(g, row) + reportedMm(g, row - 1) + reportedMm(g, row - 2))
const puts: Put[] = [
  {
    name: 'a point one place to the right',
    kind: 'decimal',
    where: (g, row) => reportedMm(g, row) >= 4 && reportedMm(g, row) < 40,
    makes: (g, row) => [[0, 10 * reportedMm(g, row)]],
    truthMm: reportedMm,
  },
  {
    name: 'a point one place to the left',
    kind: 'decimal',
    where: (g, row) => reportedMm(g, row) >= 12,
    makes: (g, row) => [[0, tenths(reportedMm(g, row) / 10)]],
    truthMm: reportedMm,
  },
  {
    name: 'a point two places to the right',
    kind: 'decimal',
    where: (g, row) => reportedMm(g, row) >= 2 && reportedMm(g, row) < 10,
    makes: (g, row) => [[0, 100 * reportedMm(g, row)]],
    truthMm: reportedMm,
  },
  {
    name: 'millimetres typed as inches',
    kind: 'unit',
    where: (g, row) => reportedMm(g, row) >= 3 && reportedMm(g, row) < 15,
    makes: (g, row) => [[0, tenths(25.4 * reportedMm(g, row))]],
    truthMm: reportedMm,
  },
  {
    name: 'rain dated a day late, the day it is dated',
    kind: 'day',
    where: (g, row) => reportedMm(g, row) >= 8 && row < 136 && isSurelyDry(g, row + 1),
    makes: (g, row) => [
      [0, 0],
      [1, reportedMm(g, row)],
    ],
    judged: 1,
    truthMm: () => 0,
  },
  {
    name: 'rain dated a day late, the day it fell',
    kind: 'day',
    where: (g, row) => reportedMm(g, row) >= 8 && row < 136 && isSurelyDry(g, row + 1),
    makes: (g, row) => [
      [0, 0],
      [1, reportedMm(g, row)],
    ],
    truthMm: reportedMm,
  },
  {
    name: 'rain dated a day early',
    kind: 'day',
    where: (g, row) => reportedMm(g, row) >= 8 && isSurelyDry(g, row - 1),
    makes: (g, row) => [
      [-1, reportedMm(g, row)],
      [0, 0],
    ],
    judged: -1,
    truthMm: () => 0,
  },
  {
    name: 'a total carried over days reported as zero',
    kind: 'carried',
    where: (g, row) => [0, 1, 2].every((back) => reportedMm(g, row - back) >= 3),
    makes: (g, row) => [
      [-2, 0],
      [-1, 0],
      [0, three(g, row)],
    ],
    truthMm: three,
    days: 3,
  },
  {
    name: 'a total over a day without a report',
    kind: 'carried',
    where: (g, row) => isSurelyDry(g, row) && reportedMm(g, row - 1) >= 10 && isTypical(g, row - 1),
    makes: (g, row) => [
      [-1, Number.NaN],
      [0, reportedMm(g, row - 1)],
    ],
    truthMm: (g, row) => reportedMm(g, row - 1),
    days: 2,
  },
  {
    name: 'a first full tube forgotten',
    kind: 'first-fill-lost',
    where: (g, row) => reportedMm(g, row) >= 29 && reportedMm(g, row) < 38,
    makes: (g, row) => [[0, tenths(reportedMm(g, row) - 25.4)]],
    truthMm: reportedMm,
  },
  {
    name: 'an overflow forgotten',
    kind: 'first-fill-only',
    where: (g, row) => reportedMm(g, row) >= 48,
    makes: () => [[0, 25.4]],
    truthMm: reportedMm,
  },
  {
    name: 'a zero without a look',
    kind: 'false-zero',
    where: (g, row) => reportedMm(g, row) >= 8,
    makes: () => [[0, 0]],
    truthMm: reportedMm,
  },
  {
    name: 'dew',
    kind: 'wetted',
    isSubtle: true,
    where: isSurelyDry,
    makes: () => [[0, 0.6]],
    truthMm: () => 0,
  },
  {
    name: 'two digits swapped',
    kind: 'transposed',
    where: (g, row) => /^1[6-9]\d$/.test(String(Math.round(10 * reportedMm(g, row)))),
    makes: (g, row) => {
      const digits = String(Math.round(10 * reportedMm(g, row)))
      return [[0, Number(digits[1]! + digits[0]! + digits[2]!) / 10]]
    },
    truthMm: reportedMm,
  },
  {
    name: 'the amount of the day before',
    kind: 'repeated',
    where: (g, row) => isSurelyDry(g, row) && reportedMm(g, row - 1) >= 6 && isTypical(g, row - 1),
    makes: (g, row) => [[0, reportedMm(g, row - 1)]],
    truthMm: () => 0,
  },
  {
    name: 'an amount out of nowhere',
    kind: 'other',
    where: isSurelyDry,
    makes: () => [[0, 88.7]],
    truthMm: () => 0,
  },
]

const mostCases = 8

/** Where the mistake is put: typical reports of uneven gauges and days. */
function placesFor({ where }: Put): [gauge: number, row: number][] {
  const places: [number, number][] = []
  for (let k = 0; k < n * days && places.length < mostCases; k++) {
    const gauge = (k * 7) % n
    const row = 8 + ((k * 37) % (days - 12))
    if (isTypical(gauge, row) && where(gauge, row) && !places.some(([, other]) => other === row))
      places.push([gauge, row])
  }
  return places
}

describe('judge', () => {
  it.each(puts)('names $name in a clean network, and proposes the truth', (put) => {
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
      expect(finding.standsOdds).toBeLessThan(put.isSubtle ? 0.9 : 0.5)
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
    const [gauge, row] = placesFor(puts[0]!)[2]!
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
        .sort((a, b) => distance(gauge, a) - distance(gauge, b))
        .slice(0, count)
    for (const [gauge, row] of placesFor(puts[0]!)) {
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

  it('same morning uses nothing later: whatever the later days hold, the findings are the same', () => {
    const day = table.firstDay + 90
    const ask = { fromDay: day - 3, toDay: day, sameMorning: true }
    const before = rowsOf(table, 80, 97)
    const after = changed(before, (mm, g, at) => (at > day ? (g % 3 === 0 ? Number.NaN : 77 - g) : mm))
    const one = judge(gauges, before, model, ask)
    const other = judge(gauges, after, model, ask)
    expect(one.count).toBe(4 * n)
    for (const key of ['day', 'gauge', 'pStands', 'mistake', 'pMistake', 'proposedMm', 'neighbourCount'] as const)
      expect(other[key]).toEqual(one[key])
    for (const index of [0, 50, 4 * n - 1]) expect(evidenceAt(other, index)).toEqual(evidenceAt(one, index))
    expect(judge(gauges, after, model, { ...ask, sameMorning: false }).pStands).not.toEqual(one.pStands)
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
    const little = placesFor({ ...puts[0]!, where: (g, row) => reportedMm(g, row) > 0 && reportedMm(g, row) <= 0.5 })
    const downpour = placesFor({ ...puts[0]!, where: (g, row) => reportedMm(g, row) > 20 })
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
    for (const [gauge, row] of placesFor(puts[7]!).slice(0, 4)) {
      const day = table.firstDay + row
      const total = (amountMm: number): ReportToWrite[] => [
        { gauge, day: day - 2, amountMm: Number.NaN },
        { gauge, day: day - 1, amountMm: Number.NaN },
        { gauge, day, amountMm, spanDays: 3 },
      ]
      const right = findingOf(judgeOneDay(withReports(table, total(three(gauge, row))), day), gauge, day)
      expect(right.spanDays).toBe(3)
      expect(right.standsOdds).toBeGreaterThan(0.8)
      const slipped = findingOf(judgeOneDay(withReports(table, total(10 * three(gauge, row))), day), gauge, day)
      expect(slipped.standsOdds).toBeLessThan(0.5)
      expect(slipped.likeliestMistake).toBe('decimal')
      expect(slipped.proposedMm).toBeCloseTo(three(gauge, row), 6)
      expect([slipped.proposedFirstDay, slipped.proposedLastDay]).toEqual([day - 2, day])
    }
  })

  it('believes what a person has settled, and lets it speak to the neighbours', () => {
    for (const [gauge, row] of placesFor(puts[0]!).slice(0, 4)) {
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
    const [gauge, row] = placesFor(puts[0]!)[0]!
    const day = table.firstDay + row
    const odd = { gauge, day, amountMm: 10 * reportedMm(gauge, row), isSettled: true }
    const { finding, explanations } = evidenceOf(judgeOneDay(withReports(table, [odd]), day), gauge, day)
    expect([finding.standsOdds, finding.likeliestMistakeOdds]).toEqual([1, 0])
    expect(explanations.map(({ kind, odds }) => [kind, odds])).toEqual([['stands', 1]])
  })
})

function distance(i: number, j: number): number {
  return Math.hypot(gauges.xM[i]! - gauges.xM[j]!, gauges.yM[i]! - gauges.yM[j]!)
}

describe('evidenceAt', () => {
  const [gauge, row] = placesFor(puts[0]!)[1]!
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
      expect(neighbour.distanceM).toBeCloseTo(distance(gauge, neighbour.gauge), 6)
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
    const [slipped, at] = placesFor(puts[4]!)[0]!
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

  it('of a carried total names its last day, its amount and its days', () => {
    const [carrier, at] = placesFor(puts[7]!)[0]!
    const end = table.firstDay + at
    const carried = withReports(table, [
      { gauge: carrier, day: end - 2, amountMm: 0 },
      { gauge: carrier, day: end - 1, amountMm: 0 },
      { gauge: carrier, day: end, amountMm: three(carrier, at) },
    ])
    const { explanations } = evidenceOf(judgeOneDay(carried, end - 1), carrier, end - 1)
    const one = explanations.find(({ kind }) => kind === 'carried')!
    expect(one.detail).toEqual({ kind: 'carried', endsOn: end, totalMm: three(carrier, at), dayCount: 3 })
    expect([one.firstDay, one.lastDay]).toEqual([end - 2, end])
  })
})

describe('findingIndex', () => {
  it('is -1 where a gauge did not report', () => {
    expect(findingIndex(clean, 3, lastDay + 1)).toBe(-1)
    expect(clean.gauge[findingIndex(clean, 3, lastDay)]).toBe(3)
  })
})
