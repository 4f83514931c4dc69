import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { evidenceAt, judge, learnModel, seededRandom } from '../../src/index.ts'
import type { Judgement } from '../../src/mistakes/judgement.ts'
import type { DailyTable } from '../../src/network/dailyTable.ts'
import type { GaugeSet } from '../../src/network/gaugeSet.ts'
import { tableRows } from '../../src/network/tableRows.ts'
import { rainyNetwork } from '../support/rainyNetwork.ts'
import { type ReportToWrite, withReports } from '../support/withReports.ts'

const runs = Number(process.env.LAWS_RUNS ?? 200)
fc.configureGlobal({ seed: Number(process.env.LAWS_SEED ?? 20_260_329), numRuns: runs })
/** A case learns a network and judges days of it: fewer of them. */
const few = { numRuns: Math.max(4, Math.floor(runs / 50)) }

const n = 18
const days = 72
const seed = fc.integer({ min: 1, max: 1_000_000 })

interface Messy {
  gauges: GaugeSet
  history: DailyTable
  days: DailyTable
  ask: { fromDay: number; toDay: number; sameMorning: boolean }
}

/** A network with silent days, traces, totals, settled readings and mistakes of many kinds; its last 12 days to judge. */
function messyNetwork(from: number, sameMorning = false): Messy {
  const { gauges, table } = rainyNetwork(from, n, days)
  const random = seededRandom(from + 1)
  const reports: ReportToWrite[] = []
  for (let gauge = 0; gauge < n; gauge++) {
    for (let row = 0; row < days; row++) {
      const day = table.firstDay + row
      const mm = table.amountMm[row * n + gauge]!
      const tenths = (value: number) => Math.round(10 * value) / 10
      const kind = Math.floor(400 * random())
      if (kind < 12) reports.push({ gauge, day, amountMm: Number.NaN })
      else if (kind < 16) reports.push({ gauge, day, amountMm: 0, isTrace: true })
      else if (kind < 19) reports.push({ gauge, day, amountMm: tenths(3 * mm), spanDays: 3 })
      else if (kind < 22) reports.push({ gauge, day, amountMm: mm, isSettled: true })
      else if (kind < 25) reports.push({ gauge, day, amountMm: tenths(10 * mm) })
      else if (kind < 28) reports.push({ gauge, day, amountMm: 0 })
      else if (kind < 30) reports.push({ gauge, day, amountMm: tenths(90 * random() ** 2) })
      else if (kind < 33 && row > 0) {
        reports.push(
          { gauge, day: day - 1, amountMm: 0 },
          { gauge, day, amountMm: table.amountMm[(row - 1) * n + gauge]! },
        )
      }
    }
  }
  const history = withReports(table, reports)
  const ask = { fromDay: table.firstDay + days - 9, toDay: table.firstDay + days - 3, sameMorning }
  return { gauges, history, days: tableRows(history, days - 14, 14), ask }
}

function judged({ gauges, history, days: rows, ask }: Messy): Judgement {
  return judge(gauges, rows, learnModel(gauges, history), ask)
}

/** The same network with gauge order[k] at place k. */
function reordered(given: Messy, order: readonly number[]): Messy {
  const pick = (values: Float64Array) => Float64Array.from(order, (g) => values[g]!)
  const { gauges } = given
  const ids = order.map((g) => gauges.ids[g]!)
  return {
    gauges: { ids, xM: pick(gauges.xM), yM: pick(gauges.yM), elevationM: pick(gauges.elevationM) },
    history: columns(given.history, order),
    days: columns(given.days, order),
    ask: given.ask,
  }
}

function columns(table: DailyTable, order: readonly number[]): DailyTable {
  const from = (i: number) => Math.floor(i / order.length) * n + order[i % order.length]!
  const indices = Array.from({ length: order.length * table.dayCount }, (_, i) => from(i))
  return {
    ...table,
    gaugeCount: order.length,
    amountMm: Float64Array.from(indices, (i) => table.amountMm[i]!),
    isTrace: Uint8Array.from(indices, (i) => table.isTrace[i]!),
    spanDays: Uint8Array.from(indices, (i) => table.spanDays[i]!),
    settled: Float32Array.from(indices, (i) => table.settled[i]!),
  }
}

/** Differences of the odds of standing, report by report: gauge k of the second is gauge order[k] of the first. */
function differences(one: Judgement, other: Judgement, order?: readonly number[]): number[] {
  expect(other.count).toBe(one.count)
  const odds = new Map<string, number>()
  for (let c = 0; c < one.count; c++) odds.set(`${one.gauge[c]} ${one.day[c]}`, one.pStands[c]!)
  return Array.from(other.pStands, (p, c) => {
    const gauge = order?.[other.gauge[c]!] ?? other.gauge[c]
    return Math.abs(p - odds.get(`${gauge} ${other.day[c]}`)!)
  })
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

describe('laws of findings', () => {
  it('the odds of all explanations of a reading sum to 1, each within 0 and 1, and agree with the finding', () => {
    fc.assert(
      fc.property(seed, fc.boolean(), (from, sameMorning) => {
        const judgement = judged(messyNetwork(from, sameMorning))
        expect(judgement.count).toBeGreaterThan(100)
        const faults: string[] = []
        const hold = (isTrue: boolean, what: string) => isTrue || faults.push(what)
        for (let index = 0; index < judgement.count; index++) {
          const { finding, explanations, tailChance } = evidenceAt(judgement, index)
          const sum = explanations.reduce((total, { odds }) => total + odds, 0)
          // Explanations below 1 in 10,000 are left out.
          hold(sum > 0.998 && sum < 1 + 1e-6, `${index} sums to ${sum}`)
          hold(finding.standsOdds >= 0 && finding.standsOdds <= 1, `${index} stands by ${finding.standsOdds}`)
          const oddsOf = (kind: string) => explanations.find((one) => one.kind === kind)?.odds ?? 0
          hold(Math.abs(oddsOf('stands') - finding.standsOdds) < 1e-4, `${index} stands by two odds`)
          const named = finding.likeliestMistakeOdds
          hold(Math.abs(oddsOf(finding.likeliestMistake) - named) < 2e-4, `${index} names a mistake with two odds`)
          for (const { kind, odds } of explanations) {
            hold(odds >= 0 && odds <= 1 + 1e-9, `${index} has odds ${odds}`)
            hold(kind === 'stands' || odds <= named + 1e-6, `${index} names ${finding.likeliestMistake} before ${kind}`)
          }
          hold(tailChance >= 0 && tailChance <= 1, `${index} has a tail of ${tailChance}`)
        }
        expect(faults).toEqual([])
      }),
      few,
    )
  })

  it('every finding has amounts that can be: quantiles that never fall, implied amounts in order, days that exist', () => {
    fc.assert(
      fc.property(seed, fc.boolean(), (from, sameMorning) => {
        const judgement = judged(messyNetwork(from, sameMorning))
        const faults: string[] = []
        const hold = (isTrue: boolean, what: string) => isTrue || faults.push(what)
        for (let index = 0; index < judgement.count; index++) {
          const { finding, explanations, neighbours } = evidenceAt(judgement, index)
          const { quantilesMm, dryChance, meanMm } = finding.expectation
          hold(
            quantilesMm.every((mm, k) => mm >= (quantilesMm[k - 1] ?? 0)),
            `${index} has quantiles ${quantilesMm}`,
          )
          hold(dryChance > 0 && dryChance < 1 && meanMm >= 0, `${index} is dry by ${dryChance}, ${meanMm} mm`)
          const { proposedMm, proposedFirstDay, proposedLastDay } = finding
          hold(proposedMm >= 0 && Number.isFinite(proposedMm), `${index} proposes ${proposedMm}`)
          hold(proposedFirstDay <= proposedLastDay, `${index} proposes days ${proposedFirstDay} to ${proposedLastDay}`)
          for (const { kind, impliedP10Mm: low, impliedMm: middle, impliedP90Mm: high } of explanations)
            hold(low >= 0 && low <= middle + 1e-9 && middle <= high + 1e-9, `${index} ${kind} ${low} ${middle} ${high}`)
          for (const { believed, weight } of neighbours)
            hold(believed >= 0 && believed <= 1 && weight >= 0 && weight <= 1, `${index} has a neighbour ${weight}`)
        }
        expect(faults).toEqual([])
      }),
      few,
    )
  })

  it('are unmoved by the order of the gauges', () => {
    fc.assert(
      fc.property(seed, fc.integer({ min: 1, max: n - 1 }), fc.boolean(), (from, turn, sameMorning) => {
        const given = messyNetwork(from, sameMorning)
        const order = Array.from({ length: n }, (_, k) => (5 * k + turn) % n)
        const apart = differences(judged(given), judged(reordered(given, order)), order)
        // Gauges of a day settle in their order; what is left of it after the sweeps stays below this.
        expect(mean(apart)).toBeLessThan(0.005)
        expect(Math.max(...apart)).toBeLessThan(0.25)
      }),
      few,
    )
  })

  it('are unmoved by a shift, a quarter turn or a mirror of the map', () => {
    fc.assert(
      fc.property(seed, fc.integer({ min: -2_000_000, max: 2_000_000 }), (from, shiftM) => {
        const given = messyNetwork(from)
        const { xM, yM } = given.gauges
        const plain = judged(given)
        for (const [x, y] of [
          [xM.map((m) => m + shiftM), yM.map((m) => -m - 3 * shiftM)],
          [yM.map((m) => -m), xM],
        ] as const) {
          const moved = { ...given, gauges: { ...given.gauges, xM: x, yM: y } }
          expect(Math.max(...differences(plain, judged(moved)))).toBeLessThan(1e-4)
        }
      }),
      few,
    )
  })

  it('hold no matter what is reported later, judged the same morning', () => {
    fc.assert(
      fc.property(seed, fc.integer({ min: 0, max: 500 }), (from, mm) => {
        const given = messyNetwork(from, true)
        const model = learnModel(given.gauges, given.history)
        const after = Array.from({ length: n }, (_, gauge) => ({
          gauge,
          day: given.ask.toDay + 1,
          amountMm: mm + gauge,
        }))
        const one = judge(given.gauges, given.days, model, given.ask)
        const other = judge(given.gauges, withReports(given.days, after), model, given.ask)
        expect(Math.max(...differences(one, other))).toBe(0)
      }),
      few,
    )
  })

  it('of the last day are the same judged the same morning or in the light of all days that there are', () => {
    fc.assert(
      fc.property(seed, (from) => {
        const given = messyNetwork(from)
        const model = learnModel(given.gauges, given.history)
        const day = given.days.firstDay + given.days.dayCount - 1
        const [whole, morning] = [false, true].map((sameMorning) =>
          judge(given.gauges, given.days, model, { fromDay: day, toDay: day, sameMorning }),
        )
        expect(mean(differences(whole!, morning!))).toBeLessThan(0.01)
      }),
      few,
    )
  })

  it('are those of the network without a gauge that never reports', () => {
    fc.assert(
      fc.property(seed, fc.integer({ min: 0, max: n - 1 }), (from, silent) => {
        const given = messyNetwork(from)
        const everyDay = Array.from({ length: days }, (_, row) => given.history.firstDay + row)
        const silence = everyDay.map((day) => ({ gauge: silent, day, amountMm: Number.NaN }))
        const history = withReports(given.history, silence)
        const withSilent = { ...given, history, days: tableRows(history, days - 14, 14) }
        const order = Array.from({ length: n }, (_, g) => g).filter((g) => g !== silent)
        const apart = differences(judged(withSilent), judged(reordered(withSilent, order)), order)
        expect(mean(apart)).toBeLessThan(0.005)
      }),
      few,
    )
  })
})
