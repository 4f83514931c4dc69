/**
 * The mistakes placed this morning: for each, which gauges suit it (by what they caught on the last mornings) and what it
 * does to their reports. Amounts in hundredths of an inch.
 */
import type { ExplanationKind } from '@gaugewright/science'
import { swapDigits, wrongUnit } from './makeMistakes.ts'
import type { Caught, MorningStage } from './morningStage.ts'

/** One mistake to place: how well a gauge suits it (none: not at all), and what it does there. */
export interface MorningPlan {
  kind: ExplanationKind
  name: string
  suits: (caught: Caught) => number | null
  make: (stage: MorningStage, gauge: number, caught: Caught) => void
}

/** Nearer to the wanted amount is better; outside the limits does not suit. */
function near(value: number, low: number, high: number): number | null {
  return value < low || value > high ? null : -Math.abs(value - (low + high) / 2) / (high - low)
}

export const morningPlans: readonly MorningPlan[] = [
  {
    kind: 'first-fill-lost',
    name: 'first fill of the tube forgotten',
    suits: ({ today }) => near(today, 105, 185),
    make: (stage, gauge, { today }) => stage.mistypeToday(gauge, today - 100, 'first-fill-lost'),
  },
  {
    kind: 'first-fill-only',
    name: 'overflow not counted',
    suits: ({ today }) => near(today, 108, 260),
    make: (stage, gauge) => stage.mistypeToday(gauge, 100, 'first-fill-only'),
  },
  {
    kind: 'decimal',
    name: 'point one place to the right',
    suits: ({ today }) => (today % 10 === 0 ? null : near(today, 50, 96)),
    make: (stage, gauge, { today }) => stage.mistypeToday(gauge, today * 10, 'decimal', 1),
  },
  {
    kind: 'false-zero',
    name: 'zero without a look',
    suits: ({ today }) => near(today, 45, 90),
    make: (stage, gauge) => stage.mistypeToday(gauge, 0, 'false-zero'),
  },
  {
    kind: 'carried',
    name: 'zeros for two days, then their total',
    suits: ({ today, yesterday }) => (yesterday < 18 ? null : near(today, 40, 90)),
    make: (stage, gauge, { today, yesterday, before }) => {
      stage.mistypeToday(gauge, today + yesterday + before, 'carried')
      stage.ownDays(gauge, 0, -2, 0)
      stage.zeroDay(gauge, -1)
      stage.zeroDay(gauge, -2)
    },
  },
  {
    kind: 'carried',
    name: 'two days not sent, then their total as one day',
    suits: ({ today, yesterday }) => (yesterday < 25 ? null : near(today, 30, 80)),
    make: (stage, gauge, { today, yesterday, before }) => {
      stage.mistypeToday(gauge, today + yesterday + before, 'carried')
      stage.ownDays(gauge, 0, -2, 0)
      stage.dropDay(gauge, -1)
      stage.dropDay(gauge, -2)
    },
  },
  {
    kind: 'day',
    name: 'yesterday’s amount entered for today',
    suits: ({ today, yesterday }) => (yesterday < 12 || yesterday > 0.4 * today ? null : near(today, 55, 110)),
    make: (stage, gauge, { yesterday, before }) => {
      stage.mistypeToday(gauge, yesterday, 'day')
      stage.ownDays(gauge, 0, -1, -1)
      stage.slipYesterday(gauge, before)
    },
  },
  {
    kind: 'unit',
    name: 'millimetres in the inch field',
    suits: ({ today }) => near(today, 14, 42),
    make: (stage, gauge, { today }) => stage.mistypeToday(gauge, wrongUnit(today, false), 'unit', 1),
  },
  {
    kind: 'repeated',
    name: 'yesterday’s amount again',
    suits: ({ today, yesterday }) => (yesterday < 14 || yesterday > 0.45 * today ? null : near(today, 50, 110)),
    make: (stage, gauge, { yesterday }) => stage.mistypeToday(gauge, yesterday, 'repeated'),
  },
  {
    kind: 'transposed',
    name: 'figures changed round',
    suits: ({ today }) => (today % 10 === 0 || today % 10 > 3 ? null : near(today, 60, 99)),
    make: (stage, gauge, { today }) => stage.mistypeToday(gauge, swapDigits(today, stage.random), 'transposed'),
  },
  {
    kind: 'decimal',
    name: 'point one place to the left',
    suits: ({ today }) => near(today, 42, 88),
    make: (stage, gauge, { today }) => stage.mistypeToday(gauge, Math.round(today / 10), 'decimal', 2),
  },
  {
    kind: 'wetted',
    name: 'dew on the dry side',
    suits: ({ today }) => (today === 0 ? 0 : null),
    make: (stage, gauge) => stage.mistypeToday(gauge, 3, 'wetted'),
  },
  {
    kind: 'wetted',
    name: 'sprinkler on the dry side',
    suits: ({ today }) => (today === 0 ? 0 : null),
    make: (stage, gauge) => stage.mistypeToday(gauge, 27, 'wetted'),
  },
  {
    kind: 'other',
    name: 'wrong amount, no known reason',
    suits: ({ today }) => near(today, 40, 75),
    make: (stage, gauge, { today }) => stage.mistypeToday(gauge, Math.round(today * 2.6) + 1, 'other'),
  },
]
