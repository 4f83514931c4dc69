/** What each habit's small plot is drawn from: bars, or the gauge among all gauges. Pure. */
import type { GaugeHabitsAnswer, WireHabit } from '@gaugewright/contract'
import { fill } from '../../words/fill.ts'
import type { Format } from '../../words/format.ts'
import type { Words } from '../../words/messages.ts'

export interface Bar {
  label: string
  /** For screen readers, where the label is short. */
  spoken: string
  value: number
  /** As text. */
  shown: string
  /** Half-width of the 80 % interval. */
  error: number | null
  /** What would be usual: a tick across the bar. */
  expected: number | null
  isStrong: boolean
}

export type HabitPlot =
  | { kind: 'bars'; title: string; axis: string; bars: Bar[]; usual: string | null; note: string | null }
  | { kind: 'spread'; title: string; text: string; marks: SpreadMarks }

/** Positions from 0 to 1 on a common axis. */
export interface SpreadMarks {
  value: number
  low: number
  high: number
  /** Of the network's gauges: 5, 25, 50, 75 and 95 %. */
  network: [number, number, number, number, number]
}

const z80 = 1.2816

export function habitPlot(habit: WireHabit, gauge: GaugeHabitsAnswer, words: Words, format: Format): HabitPlot | null {
  switch (habit.kind) {
    case 'dated':
      return lagPlot(gauge, words, format)
    case 'fives':
    case 'tens':
      return digitPlot(gauge, words, format)
    case 'few-light':
      return amountPlot(gauge, words, format)
    case 'carried':
      return weekdayPlot(gauge, words, format)
    case 'shifting':
    case 'mistaken':
    case 'coarse':
    case 'off-steps':
    case 'fits-poorly':
      return spreadPlot(habit, gauge, words, format)
  }
}

function lagPlot({ agreement }: GaugeHabitsAnswer, words: Words, format: Format): HabitPlot | null {
  const own = words.gauges
  const known = agreement.filter(({ value }) => value !== null)
  if (known.length === 0) return null
  const most = Math.max(...known.map(({ value }) => value ?? 0))
  const bars = agreement.map(({ lagDays, value, error }, k): Bar => {
    const shown = value === null ? '–' : format.number(value, 2)
    return {
      label: lagDays > 0 ? `+${lagDays}` : String(lagDays).replace('-', '−'),
      spoken: own.lags[k] ?? String(lagDays),
      value: Math.max(0, value ?? 0),
      shown,
      error: error === null ? null : z80 * error,
      expected: null,
      isStrong: value !== null && value === most,
    }
  })
  return { kind: 'bars', title: own.lagTitle, axis: own.lagAxis, bars, usual: null, note: own.lagNote }
}

function digitPlot({ lastDigits }: GaugeHabitsAnswer, words: Words, format: Format): HabitPlot | null {
  const own = words.gauges
  const { counts, expected, stepMm, fromSteps } = lastDigits
  if (counts.every((count) => count === 0)) return null
  const bars = counts.map((count, digit): Bar => {
    const usual = expected[digit] ?? 0
    return {
      label: String(digit),
      spoken: String(digit),
      value: count,
      shown: format.whole(count),
      error: null,
      expected: usual,
      // Beyond chance: three standard deviations of a count.
      isStrong: count > usual + 3 * Math.sqrt(usual),
    }
  })
  return {
    kind: 'bars',
    title: fill(own.digitTitle, { amount: format.step(stepMm * fromSteps) }),
    axis: fill(own.digitAxis, { step: format.step(stepMm) }),
    bars,
    usual: own.unrounded,
    note: null,
  }
}

function amountPlot({ amounts }: GaugeHabitsAnswer, words: Words, format: Format): HabitPlot | null {
  const own = words.gauges
  if (amounts.every(({ around }) => around === 0)) return null
  const bars = amounts.map(({ belowMm, own: count, around }): Bar => {
    const label = belowMm === null ? own.amountMore : format.bare(belowMm)
    return {
      label,
      spoken: label,
      value: count,
      shown: format.whole(count),
      error: null,
      expected: around,
      isStrong: count < around - 3 * Math.sqrt(around),
    }
  })
  const axis = fill(own.amountAxis, { unit: format.unitName })
  return { kind: 'bars', title: own.amountTitle, axis, bars, usual: own.around, note: null }
}

function weekdayPlot({ carriedByWeekday }: GaugeHabitsAnswer, words: Words, format: Format): HabitPlot | null {
  const own = words.gauges
  if (carriedByWeekday === null) return null
  const most = Math.max(...carriedByWeekday)
  const bars = carriedByWeekday.map((count, day): Bar => {
    const label = own.weekdays[day] ?? ''
    const shown = format.number(count, 1)
    return { label, spoken: label, value: count, shown, error: null, expected: null, isStrong: count === most }
  })
  return { kind: 'bars', title: own.weekdayTitle, axis: '', bars, usual: null, note: null }
}

function spreadPlot(habit: WireHabit, gauge: GaugeHabitsAnswer, words: Words, format: Format): HabitPlot | null {
  const own = words.gauges
  const network = gauge.spread[habit.kind]
  if (network === undefined || network.length !== 5) return null
  const [least = 0, quarter = 0, middle = 0, threeQuarters = 0, most = 0] = network
  const show = figureOf(habit.kind, words, format)
  const from = Math.min(habit.low, least)
  const span = Math.max(habit.high, most) - from
  const at = (value: number): number => (span > 0 ? (value - from) / span : 0.5)
  const text = fill(own.spreadText, {
    value: show(habit.value),
    low: show(habit.low),
    high: show(habit.high),
    quarter: show(quarter),
    threeQuarters: show(threeQuarters),
    least: show(least),
    most: show(most),
  })
  return {
    kind: 'spread',
    title: own.spreadTitle,
    text,
    marks: {
      value: at(habit.value),
      low: at(habit.low),
      high: at(habit.high),
      network: [at(least), at(quarter), at(middle), at(threeQuarters), at(most)],
    },
  }
}

function figureOf(kind: WireHabit['kind'], words: Words, format: Format): (value: number) => string {
  if (kind === 'coarse') return format.step
  if (kind === 'off-steps') return (share) => `${Math.round(100 * share)} %`
  if (kind === 'fits-poorly') return (value) => format.number(value, 2)
  return (value) => fill(words.gauges.times, { value: format.number(value, 1) })
}
