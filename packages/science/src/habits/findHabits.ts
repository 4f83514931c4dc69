/** The habits of every gauge of a network, from its record and what was learned of it. */
import { pairLags } from '../expectation/correlation.ts'
import { judge } from '../mistakes/judge.ts'
import type { DecidedCounts } from '../model/learnRatesFromDecisions.ts'
import type { Model } from '../model/model.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { latestRows } from '../network/tableRows.ts'
import { quantileOfSorted } from '../stats/quantile.ts'
import { type Agreement, agreementsByLag, withError } from './agreementByLag.ts'
import { datedHabit } from './datedHabit.ts'
import { coarseHabit, offStepsHabit, roundingHabits } from './digitHabits.ts'
import { fitHabit } from './fitHabit.ts'
import { digitsOf, type GaugeDigits, unroundedDigits } from './gaugeDigits.ts'
import { type Habit, type HabitKind, type HabitSeen, habitKinds, sureEnough } from './habit.ts'
import { type JudgedSums, judgedSums } from './judgedSums.ts'
import { amountClassesMm, lightAmounts } from './lightAmounts.ts'
import { rateHabits } from './rateHabits.ts'

export interface GaugeHabits {
  /** What can be told of the gauge, the strongest first; kinds that cannot be told are absent. */
  habits: Habit[]
  /** Daily readings of the record looked at. */
  readings: number
  /** Agreement with the gauges around at lags of -2 … 2 days, with standard errors; NaN where it cannot be told. */
  agreement: { lagDays: number; value: number; error: number }[]
  /** Last digits 0 … 9 of amounts of digitsFromSteps or more, and what unrounded amounts would have. */
  lastDigits: { stepMm: number; counts: number[]; expected: number[] }
  /** Wet amounts by class (upper ends in amountClassesMm), own and of the gauges around on the same days. */
  amounts: { own: number[]; around: number[] }
  /** Undeclared totals by the weekday on which they end, Monday first; sums of odds. Null where days were not judged. */
  carriedByWeekday: number[] | null
  /** Of what looks misdated or carried at this gauge, the share that is taken for its habit and not doubted. */
  takenAsHabit: number
}

export interface NetworkHabits {
  /** By gauge, in their order. */
  gauges: GaugeHabits[]
  /** Values of the network's gauges at 5, 25, 50, 75 and 95 %, by kind; absent where nothing can be told. */
  spread: Partial<Record<HabitKind, number[]>>
  /** Days of the record looked at, and how many of the latest were judged. */
  dayCount: number
  judgedDays: number
}

/** Days of record looked at, the latest: habits change. */
const mostDays = 1100
/** Reports judged, at most, and days below which judging tells no habits. */
const mostJudged = 120_000
const leastJudgedDays = 45
const mostJudgedAtAll = 400_000
const leastGauges = 8
/** Nothing about a person's ways is certain. */
const mostSure = 0.999
/** Rates against the network's from which they matter. */
const muchOftener = 1.5
const muchTooFew = 0.7
const spreadLevels = [0.05, 0.25, 0.5, 0.75, 0.95] as const

/**
 * @param gauges   n gauges on a plane, m
 * @param record   daily table of n gauges as accepted; its latest days are looked at
 * @param model    learned of the same gauges
 * @param decided  readings that persons found mistaken count as such; in the record they stand corrected
 */
export function findHabits(gauges: GaugeSet, record: DailyTable, model: Model, decided?: DecidedCounts): NetworkHabits {
  const table = latestRows(record, mostDays)
  const { climate, correlation } = model
  const agreements = agreementsByLag(gauges, table, climate, correlation.offsetDays, mostDays)
  const digits = digitsOf(table, climate.resolutionMm)
  const light = lightAmounts(gauges, table)
  const judged = judgeLatest(gauges, table, model)
  const lightRates = rateHabits({
    kind: 'few-light',
    events: light.own,
    exposure: light.expected,
    readings: light.readings,
    matters: muchTooFew,
  })
  const rates = judged === null ? [] : ratesOf(judged.sums, decided)
  const usualFit = middle(correlation.fit)
  const usualStepMm = middle(climate.resolutionMm)
  const usualOff = middle(digits.map(({ offSteps, wet }) => offSteps / Math.max(1, wet)))
  const seen = agreements.map((agreement, g): HabitSeen[] =>
    [
      datedHabit(agreement),
      ...rates.map((byGauge) => byGauge[g] ?? null),
      ...roundingHabits(digits[g]!),
      coarseHabit(digits[g]!, usualStepMm),
      offStepsHabit(digits[g]!, usualOff),
      lightRates[g] ?? null,
      fitHabit(agreement, correlation.fit[g]!, usualFit),
    ].filter((habit) => habit !== null),
  )
  const spread = spreadOf(seen)
  return {
    gauges: seen.map((habits, g) => ({
      habits: inOrder(habits, spread),
      readings: dailyReadings(table, g),
      agreement: agreementPlot(agreements[g]!),
      lastDigits: digitsPlot(digits[g]!),
      amounts: {
        own: [...light.byClass.subarray(g * amountClassesMm.length, (g + 1) * amountClassesMm.length)],
        around: [...light.expectedByClass.subarray(g * amountClassesMm.length, (g + 1) * amountClassesMm.length)],
      },
      carriedByWeekday: judged === null ? null : [...judged.sums.carriedByWeekday.subarray(g * 7, g * 7 + 7)],
      takenAsHabit: 1 - model.slipShare[g]!,
    })),
    spread,
    dayCount: table.dayCount,
    judgedDays: judged?.days ?? 0,
  }
}

function judgeLatest(gauges: GaugeSet, table: DailyTable, model: Model): { sums: JudgedSums; days: number } | null {
  const n = gauges.ids.length
  const days = Math.min(table.dayCount, Math.max(leastJudgedDays, Math.floor(mostJudged / Math.max(1, n))))
  if (days < leastJudgedDays || n < leastGauges || n * days > mostJudgedAtAll) return null
  const latest = latestRows(table, days)
  const ask = { fromDay: latest.firstDay, toDay: latest.firstDay + days - 1, sameMorning: false }
  return { sums: judgedSums(judge(gauges, latest, model, ask)), days }
}

function ratesOf(sums: JudgedSums, decided: DecidedCounts | undefined): (HabitSeen | null)[][] {
  const exposure = sums.reports
  const readings = sums.reports
  const alone = decided === undefined ? sums.alone : sums.alone.map((sum, g) => sum + decided.mistaken[g]!)
  return [
    rateHabits({ kind: 'shifting', events: sums.shifted, exposure, readings, matters: muchOftener }),
    rateHabits({ kind: 'carried', events: sums.carried, exposure, readings, matters: muchOftener }),
    rateHabits({ kind: 'mistaken', events: alone, exposure, readings, matters: muchOftener }),
  ]
}

function spreadOf(seen: readonly HabitSeen[][]): NetworkHabits['spread'] {
  const spread: NetworkHabits['spread'] = {}
  for (const kind of habitKinds) {
    const values = seen.flatMap((habits) => habits.filter((habit) => habit.kind === kind).map(({ value }) => value))
    if (values.length === 0) continue
    const sorted = Float64Array.from(values).sort()
    spread[kind] = spreadLevels.map((level) => quantileOfSorted(sorted, level))
  }
  return spread
}

function inOrder(seen: HabitSeen[], spread: NetworkHabits['spread']): Habit[] {
  return seen
    .map(({ size, ...habit }): Habit => {
      const usual = spread[habit.kind]?.[2] ?? habit.value
      const sure = Math.min(mostSure, habit.sure)
      return { ...habit, usual, sure, isHabit: sure >= sureEnough, strength: sure * size }
    })
    .sort((a, b) => b.strength - a.strength || habitKinds.indexOf(a.kind) - habitKinds.indexOf(b.kind))
}

function agreementPlot(agreement: Agreement): GaugeHabits['agreement'] {
  return Array.from(agreement.byLag, (_, k) => {
    const { value, error } = withError(agreement, (byLag) => byLag[k]!)
    return { lagDays: k - pairLags, value, error }
  })
}

function digitsPlot(digits: GaugeDigits): GaugeHabits['lastDigits'] {
  const expected = unroundedDigits(digits.meanWithDigits).map((share) => share * digits.withDigits)
  return { stepMm: digits.stepMm, counts: [...digits.lastDigit], expected }
}

function dailyReadings(table: DailyTable, gauge: number): number {
  let count = 0
  for (let i = gauge; i < table.spanDays.length; i += table.gaugeCount) if (table.spanDays[i] === 1) count++
  return count
}

function middle(values: ArrayLike<number>): number {
  return values.length === 0 ? Number.NaN : quantileOfSorted(Float64Array.from(values).sort(), 0.5)
}
