import type { WireHabit } from '@gaugewright/contract'
import type { GaugeHabits, Habit } from '@gaugewright/science'
import type { Gauge, NetworkSettings } from '../../ports/ledger.ts'
import { habitWords } from '../wording/wordHabit.ts'

/** Share of a gauge's undeclared totals that must end on one weekday for it to be named; a seventh is chance. */
const mostlyShare = 0.4
const enoughTotals = 3

/** Habits of one gauge with their words. */
export function wireHabits(
  found: GaugeHabits,
  habits: readonly Habit[],
  network: Pick<NetworkSettings, 'language' | 'unit'>,
): WireHabit[] {
  const { language, unit } = network
  const { stepMm } = found.lastDigits
  const totalsEndOn = commonWeekday(found.carriedByWeekday)
  return habits.map((habit) => ({
    ...habit,
    readings: Math.round(habit.readings),
    ...habitWords({ language, unit, habit, stepMm, totalsEndOn }),
  }))
}

function commonWeekday(carriedByWeekday: readonly number[] | null): number | null {
  if (carriedByWeekday === null) return null
  const all = carriedByWeekday.reduce((sum, count) => sum + count, 0)
  const most = Math.max(...carriedByWeekday)
  return all >= enoughTotals && most >= mostlyShare * all ? carriedByWeekday.indexOf(most) : null
}

export function wireGauge({ id, code, name, area, observerName, elevationM }: Gauge) {
  return { gaugeId: id, code, name, area, observerName, elevationM }
}

export function wireNetwork({ id, name, unit, timeZone, readingTime, language }: NetworkSettings) {
  return { id, name, unit, timeZone, readingTime, language }
}
