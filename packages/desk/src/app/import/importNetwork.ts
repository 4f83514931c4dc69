/** Which network a delivery is for. A ledger that has none gets one, with settings that are told back to the user. */
import { observingDays, type Unit } from '@gaugewright/science'
import { IntakeRefusal } from '../../ports/intakeRefusal.ts'
import type { NetworkSettings } from '../../ports/ledger.ts'
import type { ImportAsk } from './importAsk.ts'

const ACCEPT_WINDOW_MIN = 120
const DOCKET_BELOW = 0.5
const USUAL_READING_TIME = '07:00'

export function importNetwork(
  existing: readonly NetworkSettings[],
  ask: ImportAsk,
  unit: Unit,
): { network: NetworkSettings; isNew: boolean } {
  const { id } = ask.network
  const found = id === undefined ? existing[0] : existing.find((network) => network.id === id)
  if (id === undefined && existing.length > 1) {
    throw new IntakeRefusal(
      'NETWORK_UNCLEAR',
      `The ledger has several networks: ${existing.map((network) => network.id).join(', ')}.`,
      'Say which one with --network.',
    )
  }
  if (found !== undefined) {
    refuseOtherSettings(found, ask)
    return { network: found, isNew: false }
  }
  const network: NetworkSettings = {
    id: id ?? 'network',
    name: ask.network.name ?? id ?? 'Network',
    timeZone: ask.network.timeZone ?? ask.localTimeZone,
    readingTime: ask.network.readingTime ?? USUAL_READING_TIME,
    acceptWindowMin: ACCEPT_WINDOW_MIN,
    unit,
    language: ask.network.language ?? 'en',
    docketBelow: DOCKET_BELOW,
  }
  const days = observingDays(network.timeZone, network.readingTime)
  if (days.kind === 'problem') throw new IntakeRefusal(days.code, `Found "${days.seen}".`, days.advice)
  return { network, isNew: true }
}

/** An import does not change a network: readings already there were placed by its zone and hour. */
function refuseOtherSettings(network: NetworkSettings, ask: ImportAsk): void {
  const { timeZone, readingTime } = ask.network
  const isOther =
    (timeZone !== undefined && timeZone !== network.timeZone) ||
    (readingTime !== undefined && readingTime !== network.readingTime)
  if (!isOther) return
  throw new IntakeRefusal(
    'NETWORK_DIFFERS',
    `The network "${network.id}" is read at ${network.readingTime}, ${network.timeZone}; found ${readingTime ?? network.readingTime}, ${timeZone ?? network.timeZone}.`,
    'Leave the settings out, or name a new network with --network.',
  )
}
