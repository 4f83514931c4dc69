/** What the office sets for urgent reports: thresholds, guidance, emergency number, destinations, a rule. All are kept. */

import { isAbsolute } from 'node:path'
import type { SetUrgentSettingsAsk, UrgentSettings } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'
import { urgentSettingsOf } from './urgent/usualUrgentSettings.ts'

export async function setUrgentSettings(
  ports: Pick<Ports, 'ledger' | 'urgent' | 'clock'>,
  ask: SetUrgentSettingsAsk,
): Promise<Answer<UrgentSettings>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { settings } = ask
  const seen = faultOf(settings)
  if (seen !== null) return refused('URGENT_SETTINGS_NOT_VALID', seen.seen, seen.advice)
  const before = await urgentSettingsOf(ports, network.value.id)
  // The same again (a button pressed twice) adds nothing.
  if (JSON.stringify(before) !== JSON.stringify({ ...before, ...settings })) {
    await ports.urgent.appendSettings(network.value.id, { settings, by: ask.by, atUtc: ports.clock.nowUtc() })
  }
  return answered(await urgentSettingsOf(ports, network.value.id))
}

function faultOf(settings: UrgentSettings): { seen: string; advice: string } | null {
  const { severeHailMm, significantHailMm, guidance, destinations, passOnRule } = settings
  if (significantHailMm < severeHailMm) {
    return { seen: 'a significant size below the severe one', advice: 'Give the larger size for significant.' }
  }
  const sorted = [...guidance].sort((one, other) => one.minutes - other.minutes)
  for (const [index, { minutes, amountUm }] of sorted.entries()) {
    const before = sorted[index - 1]
    if (before === undefined) continue
    if (before.minutes === minutes) {
      return { seen: `two guidance amounts over ${minutes} minutes`, advice: 'Give one for each duration.' }
    }
    if (before.amountUm > amountUm) {
      return { seen: `less over ${minutes} minutes than over ${before.minutes}`, advice: 'Let amounts grow with time.' }
    }
  }
  if (new Set(destinations.map(({ name }) => name)).size < destinations.length) {
    return { seen: 'two destinations of one name', advice: 'Give each a name of its own.' }
  }
  const wrong = destinations.find((destination) => !isReachable(destination))
  if (wrong !== undefined) {
    return {
      seen: `the destination "${wrong.name}"`,
      advice: 'A file needs a whole folder path, mail an address, a webhook an http or https address.',
    }
  }
  if (passOnRule !== null && !destinations.some(({ name }) => name === passOnRule.destination)) {
    return { seen: `a rule to "${passOnRule.destination}"`, advice: 'Choose one of the destinations.' }
  }
  return null
}

function isReachable({ way, to }: UrgentSettings['destinations'][number]): boolean {
  if (way === 'file') return isAbsolute(to)
  if (way === 'mail') return /^[^\s@<>,;]+@[^\s@<>,;]+$/.test(to)
  return URL.canParse(to) && /^https?:$/.test(new URL(to).protocol)
}
