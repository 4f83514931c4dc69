/** The habits of one gauge: each with its words, and what its small plot is drawn from. */
import type { GaugeHabitsAnswer, GaugeHabitsAsk } from '@gaugewright/contract'
import { amountClassesMm, digitsFromSteps, type GaugeHabits } from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { type LoadedHabits, loadHabits } from './habits/loadHabits.ts'
import { wireGauge, wireHabits, wireNetwork } from './habits/wireHabit.ts'
import type { HabitsAsk } from './networkHabits.ts'
import { allowedForLine } from './wording/wordHabit.ts'

/** @param ask.gauge  code as shown, in any case, or id */
export async function gaugeHabits(
  ports: Pick<Ports, 'ledger'>,
  ask: GaugeHabitsAsk & HabitsAsk,
): Promise<Answer<GaugeHabitsAnswer>> {
  const loaded = await loadHabits(ports.ledger, ask.wait === true, ask.signal)
  if (!loaded.ok) return loaded
  const { gauges, habits } = loaded.value
  const wanted = ask.gauge.toLowerCase()
  const index = gauges.findIndex(({ id, code }) => code.toLowerCase() === wanted || id === ask.gauge)
  const found = habits.gauges[index]
  if (found === undefined) {
    return refused('GAUGE_NOT_IN_NETWORK', `"${ask.gauge}"`, 'Give a gauge code as "gaugewright habits" lists it.')
  }
  return answered(answerFrom(loaded.value, index, found))
}

function answerFrom(loaded: LoadedHabits, index: number, found: GaugeHabits): GaugeHabitsAnswer {
  const { network, gauges, habits, firstDay, lastDay, learned } = loaded
  const told = found.habits.filter(({ isHabit }) => isHabit)
  const others = found.habits.filter(({ isHabit }) => !isHabit)
  const gauge = gauges[index]
  if (gauge === undefined) throw new Error(`no gauge at ${index}`)
  const offsetDays = learned.model.correlation.offsetDays[index] ?? 0
  const mistaken = learned.decided?.mistaken[index] ?? 0
  const standing = learned.decided?.standing[index] ?? 0
  return {
    ...wireGauge(gauge),
    network: wireNetwork(network),
    firstDay,
    lastDay,
    judgedDays: habits.judgedDays,
    readings: found.readings,
    habits: wireHabits(found, [...told, ...others], network),
    agreement: found.agreement.map(({ lagDays, value, error }) => ({
      lagDays,
      value: orNull(value),
      error: orNull(error),
    })),
    lastDigits: { ...found.lastDigits, fromSteps: digitsFromSteps },
    amounts: amountClassesMm.map((belowMm, k) => ({
      belowMm: orNull(belowMm),
      own: found.amounts.own[k] ?? 0,
      around: found.amounts.around[k] ?? 0,
    })),
    carriedByWeekday: found.carriedByWeekday,
    spread: habits.spread,
    allowedFor: {
      offsetDays,
      takenAsHabit: found.takenAsHabit,
      sentence: allowedForLine(offsetDays, found.takenAsHabit, network.language),
    },
    decided: mistaken + standing === 0 ? null : { mistaken, standing },
  }
}

function orNull(value: number): number | null {
  return Number.isFinite(value) ? value : null
}
