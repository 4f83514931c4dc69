/**
 * Every event of urgent reports from a number on, as it comes, until nobody listens: those that this process stores at
 * once, those of another process (a command, a second desk) within a second.
 */
import type { UrgentItem, UrgentLive } from '@gaugewright/contract'
import { parseInstant } from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import type { Urgent, UrgentEvent } from '../ports/urgent.ts'
import { NearReports } from './urgent/nearReports.ts'
import { urgentBoard } from './urgent/urgentBoard.ts'
import { urgentSettingsOf } from './urgent/usualUrgentSettings.ts'
import { weighReport } from './urgent/weighReports.ts'

export type FollowUrgentPorts = Pick<Ports, 'ledger' | 'urgent' | 'clock'>

export interface FollowUrgentAsk {
  networkId: string
  /** Number of the last event known; null to begin with the next one. */
  after: number | null
  tell: (live: UrgentLive) => void
  signal: AbortSignal
}

const lookMs = 1000
const pageSize = 200
/** Looks are shared by all open desks. */
const mostKept = 500
const kept = new WeakMap<Urgent, Map<string, Promise<UrgentItem | null>>>()

export async function followUrgent(ports: FollowUrgentPorts, ask: FollowUrgentAsk): Promise<void> {
  const { networkId, tell, signal } = ask
  const newest = await ports.urgent.lastNumber(networkId)
  // A ledger brought back from a backup counts from lower on.
  let last = Math.min(ask.after ?? newest, newest)
  let wake = (): void => undefined
  let isWoken = false
  const stop = ports.urgent.listen((of) => {
    if (of !== networkId) return
    isWoken = true
    wake()
  })
  signal.addEventListener('abort', () => wake(), { once: true })
  try {
    while (!signal.aborted) {
      isWoken = false
      const events = await ports.urgent.eventsAfter(networkId, last, pageSize)
      for (const event of events) {
        const item = event.what === 'filed' ? await itemOf(ports, networkId, event) : null
        if (signal.aborted) return
        tell({ number: event.number, what: event.what, reportId: event.reportId, atUtc: event.atUtc, item })
        last = event.number
      }
      if (events.length > 0 || isWoken || signal.aborted) continue
      await new Promise<void>((resume) => {
        const timer = setTimeout(resume, lookMs)
        wake = () => {
          clearTimeout(timer)
          resume()
        }
      })
      wake = () => undefined
    }
  } finally {
    stop()
  }
}

/** The report as it is on the desk; null where it is older than the board. */
async function itemOf(ports: FollowUrgentPorts, networkId: string, event: UrgentEvent): Promise<UrgentItem | null> {
  const ofStore = kept.get(ports.urgent) ?? new Map<string, Promise<UrgentItem | null>>()
  kept.set(ports.urgent, ofStore)
  const key = `${networkId} ${event.number}`
  const before = ofStore.get(key)
  if (before !== undefined) return before
  const item = weigh(ports, networkId, event.reportId)
  ofStore.set(key, item)
  if (ofStore.size > mostKept) for (const old of [...ofStore.keys()].slice(0, mostKept / 2)) ofStore.delete(old)
  item.catch(() => ofStore.delete(key))
  return item
}

async function weigh(ports: FollowUrgentPorts, networkId: string, reportId: string): Promise<UrgentItem | null> {
  const { reports, gauges } = await urgentBoard(ports, networkId)
  const placed = reports.find(({ id }) => id === reportId)
  if (placed === undefined) return null
  const settings = await urgentSettingsOf(ports, networkId)
  const nowMs = parseInstant(ports.clock.nowUtc()) ?? 0
  return weighReport(placed, new NearReports(reports, gauges), { settings, nowMs })
}
