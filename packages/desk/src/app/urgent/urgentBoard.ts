/**
 * Reports of the last day, kept folded between looks: events are only ever added, so that each look reads the new ones
 * alone. One board for each store and network.
 */
import { formatInstant, parseInstant } from '@gaugewright/science'
import type { Gauge } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'
import type { Urgent, UrgentEvent } from '../../ports/urgent.ts'
import { foldEvents } from './foldEvents.ts'
import { type PlacedReportNow, placedReport } from './placedReport.ts'

export interface UrgentBoard {
  lastNumber: number
  reports: PlacedReportNow[]
  gauges: Gauge[]
}

interface Kept {
  lastNumber: number
  events: Map<string, UrgentEvent[]>
  /** Folded and placed; null where the gauge is not known. */
  placed: Map<string, PlacedReportNow | null>
  gauges: { list: Gauge[]; byId: Map<string, Gauge>; readAtMs: number } | null
}

export const boardHours = 24
const pageSize = 2000
/** Gauges change seldom; a new one is known after this. */
const gaugesFreshMs = 10_000

const boards = new WeakMap<Urgent, Map<string, Promise<Kept>>>()

/** Reports of the last 24 hours, and all that nobody has looked at. */
export async function urgentBoard(
  ports: Pick<Ports, 'ledger' | 'urgent' | 'clock'>,
  networkId: string,
): Promise<UrgentBoard> {
  const ofStore = boards.get(ports.urgent) ?? new Map<string, Promise<Kept>>()
  boards.set(ports.urgent, ofStore)
  const before = ofStore.get(networkId)
  // Looks take turns, so that none reads an event twice.
  const next = (before ?? startBoard(ports, networkId)).then((kept) => refresh(ports, networkId, kept))
  ofStore.set(networkId, next)
  try {
    return boardOf(ports, await next)
  } catch (error) {
    ofStore.delete(networkId)
    throw error
  }
}

async function startBoard({ urgent, clock }: Pick<Ports, 'urgent' | 'clock'>, networkId: string): Promise<Kept> {
  // The number is read first: what comes in between is read again, and known by its number.
  const lastNumber = await urgent.lastNumber(networkId)
  const kept: Kept = { lastNumber: 0, events: new Map(), placed: new Map(), gauges: null }
  for (const event of await urgent.eventsSince(networkId, sinceUtc(clock.nowUtc()))) take(kept, event)
  kept.lastNumber = Math.max(kept.lastNumber, lastNumber)
  return kept
}

async function refresh(
  ports: Pick<Ports, 'ledger' | 'urgent' | 'clock'>,
  networkId: string,
  kept: Kept,
): Promise<Kept> {
  for (;;) {
    const events = await ports.urgent.eventsAfter(networkId, kept.lastNumber, pageSize)
    for (const event of events) {
      // Something happened to an older report: it comes back with all that happened before.
      if (event.what !== 'filed' && !kept.events.has(event.reportId)) {
        for (const earlier of await ports.urgent.eventsOf(networkId, event.reportId)) {
          if (earlier.number < event.number) take(kept, earlier)
        }
      }
      take(kept, event)
    }
    if (events.length < pageSize) break
  }
  const nowMs = parseInstant(ports.clock.nowUtc()) ?? 0
  if (kept.gauges === null || Math.abs(nowMs - kept.gauges.readAtMs) > gaugesFreshMs) {
    const list = await ports.ledger.gauges(networkId)
    kept.gauges = { list, byId: new Map(list.map((gauge) => [gauge.id, gauge])), readAtMs: nowMs }
    // Gauges may have moved, or be new.
    kept.placed.clear()
  }
  return kept
}

function take(kept: Kept, event: UrgentEvent): void {
  const events = kept.events.get(event.reportId) ?? []
  if (events.some(({ number }) => number === event.number)) return
  events.push(event)
  events.sort((one, other) => one.number - other.number)
  kept.events.set(event.reportId, events)
  kept.placed.delete(event.reportId)
  kept.lastNumber = Math.max(kept.lastNumber, event.number)
}

function boardOf({ clock }: Pick<Ports, 'clock'>, kept: Kept): UrgentBoard {
  const since = sinceUtc(clock.nowUtc())
  const reports: PlacedReportNow[] = []
  for (const [reportId, events] of kept.events) {
    let placed = kept.placed.get(reportId)
    if (placed === undefined) {
      const now = foldEvents(events)
      placed = now === null ? null : placedReport(now, kept.gauges?.byId ?? new Map())
      kept.placed.set(reportId, placed)
    }
    if (placed === null) continue
    const isRecent = events.some(({ what, atUtc }) => what === 'filed' && atUtc >= since)
    if (!isRecent && placed.state !== 'new') {
      kept.events.delete(reportId)
      kept.placed.delete(reportId)
      continue
    }
    reports.push(placed)
  }
  return { lastNumber: kept.lastNumber, reports, gauges: kept.gauges?.list ?? [] }
}

function sinceUtc(nowUtc: string): string {
  return formatInstant((parseInstant(nowUtc) ?? 0) - boardHours * 3_600_000)
}
