/** The habits of all gauges of the network: every gauge, the one with the strongest habit first. */
import type { NetworkHabitsAnswer } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { loadHabits } from './habits/loadHabits.ts'
import { wireGauge, wireHabits, wireNetwork } from './habits/wireHabit.ts'

export interface HabitsAsk {
  /** Wait for what is newest, rather than take what was found last. */
  wait?: boolean
  signal?: AbortSignal
}

export async function networkHabits(
  ports: Pick<Ports, 'ledger'>,
  ask: HabitsAsk = {},
): Promise<Answer<NetworkHabitsAnswer>> {
  const loaded = await loadHabits(ports.ledger, ask.wait === true, ask.signal)
  if (!loaded.ok) return loaded
  const { network, gauges, habits, firstDay, lastDay } = loaded.value
  const rows = gauges.flatMap((gauge, index) => {
    const found = habits.gauges[index]
    if (found === undefined) return []
    const told = found.habits.filter((habit) => habit.isHabit)
    return [
      {
        ...wireGauge(gauge),
        readings: found.readings,
        strength: told[0]?.strength ?? 0,
        habits: wireHabits(found, told, network),
      },
    ]
  })
  rows.sort((a, b) => b.strength - a.strength || (a.code < b.code ? -1 : 1))
  return answered({ network: wireNetwork(network), firstDay, lastDay, judgedDays: habits.judgedDays, gauges: rows })
}
