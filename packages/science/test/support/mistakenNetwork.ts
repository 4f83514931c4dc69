/** A clean network with a past, and one way to make every kind of mistake in it where the truth is known. */

import { amountQuantile, predictiveAt } from '../../src/expectation/predictive.ts'
import { evidenceAt, findingAt, findingIndex } from '../../src/mistakes/evidence.ts'
import type { Evidence, Finding } from '../../src/mistakes/finding.ts'
import { judge } from '../../src/mistakes/judge.ts'
import type { Judgement } from '../../src/mistakes/judgement.ts'
import type { Mistake } from '../../src/mistakes/mistake.ts'
import { learnModel } from '../../src/model/learnModel.ts'
import type { DailyTable } from '../../src/network/dailyTable.ts'
import { tableRows } from '../../src/network/tableRows.ts'
import { rainyNetwork, rowsOf } from './rainyNetwork.ts'

export const n = 30
export const days = 140
export const { gauges, table } = rainyNetwork(5, n, days)
export const model = learnModel(gauges, rowsOf(table, 0, 120))
export const lastDay = table.firstDay + days - 1
export const clean = judge(gauges, table, model, { fromDay: table.firstDay, toDay: lastDay, sameMorning: false })

function tenths(mm: number): number {
  return Math.round(10 * mm) / 10
}

export function reportedMm(gauge: number, row: number): number {
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
export function isSurelyDry(gauge: number, row: number): boolean {
  return reportedMm(gauge, row) === 0 && expectedMm(gauge, row, 0.97) === 0
}

/** Judge one day in the light of a week before it and two days after. */
export function judgeOneDay(given: DailyTable, day: number): Judgement {
  const row = day - given.firstDay
  const first = Math.max(0, row - 7)
  const around = tableRows(given, first, Math.min(given.dayCount, row + 3) - first)
  return judge(gauges, around, model, { fromDay: day, toDay: day, sameMorning: false })
}

export function findingOf(judgement: Judgement, gauge: number, day: number): Finding {
  return findingAt(judgement, findingIndex(judgement, gauge, day))
}

export function evidenceOf(judgement: Judgement, gauge: number, day: number): Evidence {
  return evidenceAt(judgement, findingIndex(judgement, gauge, day))
}

export interface KnownMistake {
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

/** True sum of three days that end on a row. */
export const threeDaysMm = (g: number, row: number) =>
  tenths(reportedMm(g, row) + reportedMm(g, row - 1) + reportedMm(g, row - 2))
export const knownMistakes: readonly KnownMistake[] = [
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
      [0, threeDaysMm(g, row)],
    ],
    truthMm: threeDaysMm,
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
    isSubtle: true,
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
export function placesFor({ where }: Pick<KnownMistake, 'where'>): [gauge: number, row: number][] {
  const places: [number, number][] = []
  for (let k = 0; k < n * days && places.length < mostCases; k++) {
    const gauge = (k * 7) % n
    const row = 8 + ((k * 37) % (days - 12))
    if (isTypical(gauge, row) && where(gauge, row) && !places.some(([, other]) => other === row))
      places.push([gauge, row])
  }
  return places
}

export function knownMistake(name: string): KnownMistake {
  const found = knownMistakes.find((one) => one.name === name)
  if (found === undefined) throw new Error(`no mistake named ${name}`)
  return found
}

export function distanceM(i: number, j: number): number {
  return Math.hypot(gauges.xM[i]! - gauges.xM[j]!, gauges.yM[i]! - gauges.yM[j]!)
}
