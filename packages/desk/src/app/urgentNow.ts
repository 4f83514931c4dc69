/** The warning desk's list: what would change a warning most, first; with storms, times and what the office has set. */
import type { UrgentItem, UrgentNow, UrgentNowAsk } from '@gaugewright/contract'
import { formatInstant, parseInstant } from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import type { Urgent, UrgentEvent } from '../ports/urgent.ts'
import { type Answer, answered } from './answer.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'
import { foldEvents } from './urgent/foldEvents.ts'
import { type PlacedReportNow, placedReport } from './urgent/placedReport.ts'
import { boardHours, urgentBoard } from './urgent/urgentBoard.ts'
import { urgentSettingsOf } from './urgent/usualUrgentSettings.ts'
import { weighReports } from './urgent/weighReports.ts'

export type UrgentNowPorts = Pick<Ports, 'ledger' | 'urgent' | 'clock'>

const lastWeighed = new WeakMap<Urgent, { key: string; weighed: ReturnType<typeof weighReports> }>()

/** More than a desk can look through: the rest is counted. */
const mostItems = 400

export async function urgentNow(ports: UrgentNowPorts, ask: UrgentNowAsk): Promise<Answer<UrgentNow>> {
  const found = await firstNetwork(ports)
  if (!found.ok) return found
  const network = found.value
  const nowUtc = ports.clock.nowUtc()
  const nowMs = parseInstant(nowUtc) ?? 0
  const board = await urgentBoard(ports, network.id)
  const sinceUtc = formatInstant(nowMs - ask.hours * 3_600_000)
  const reports =
    ask.hours <= boardHours
      ? board.reports.filter(({ receivedAtUtc, state }) => state === 'new' || receivedAtUtc >= sinceUtc)
      : await olderReports(ports, network.id, sinceUtc, board.gauges)
  const settings = await urgentSettingsOf(ports, network.id)
  // Several desks ask at once after the same event: they share one look. Ages are told to ten seconds.
  const key = [network.id, board.lastNumber, ask.hours, Math.floor(nowMs / 10_000), JSON.stringify(settings)].join(' ')
  const before = lastWeighed.get(ports.urgent)
  const weighed =
    before?.key === key ? before.weighed : weighReports({ reports, gauges: board.gauges, settings, nowMs })
  lastWeighed.set(ports.urgent, { key, weighed })
  const { items, storms } = weighed
  const { id, name, unit, timeZone, language } = network
  return answered({
    network: { id, name, unit, timeZone, language },
    nowUtc,
    items: items.slice(0, mostItems),
    storms,
    settings,
    newCount: items.filter(({ state }) => state === 'new').length,
    hiddenCount: Math.max(0, items.length - mostItems),
    medianSeconds: {
      toDesk: medianOf(items, 'secondsToDesk'),
      toSeen: medianOf(items, 'secondsToSeen'),
      toPassedOn: medianOf(items, 'secondsToPassedOn'),
    },
    lastEvent: board.lastNumber,
  })
}

async function olderReports(
  { urgent }: UrgentNowPorts,
  networkId: string,
  sinceUtc: string,
  gauges: Parameters<typeof weighReports>[0]['gauges'],
): Promise<PlacedReportNow[]> {
  const byId = new Map(gauges.map((gauge) => [gauge.id, gauge]))
  const eventsOf = new Map<string, UrgentEvent[]>()
  for (const event of await urgent.eventsSince(networkId, sinceUtc)) {
    eventsOf.set(event.reportId, [...(eventsOf.get(event.reportId) ?? []), event])
  }
  return [...eventsOf.values()].flatMap((events) => {
    const now = foldEvents(events)
    const placed = now === null ? null : placedReport(now, byId)
    return placed === null ? [] : [placed]
  })
}

function medianOf(
  items: readonly UrgentItem[],
  name: 'secondsToDesk' | 'secondsToSeen' | 'secondsToPassedOn',
): number | null {
  const seconds = items.flatMap((item) => item[name] ?? []).sort((one, other) => one - other)
  const middle = seconds.length >> 1
  if (seconds.length === 0) return null
  return seconds.length % 2 === 1
    ? (seconds[middle] as number)
    : ((seconds[middle - 1] as number) + (seconds[middle] as number)) / 2
}
