/** Between rows of the tables and the shapes of the ports. */
import {
  type Confirmed,
  type Decision,
  type Door,
  formatInstant,
  isoFromEpochDay,
  type Mistake,
  parseIsoDay,
  type Reading,
  type Unit,
  type Verdict,
} from '@gaugewright/science'
import type { Gauge, NetworkSettings } from '../../ports/ledger.ts'
import { LedgerError } from '../../ports/ledgerError.ts'
import { instantMs } from '../instantMs.ts'
import type { DecisionTable, GaugeTable, NetworkTable, ReadingTable } from './tables.ts'

export function networkFromRow(row: NetworkTable): NetworkSettings {
  return {
    id: row.id,
    name: row.name,
    timeZone: row.time_zone,
    readingTime: row.reading_time,
    acceptWindowMin: row.accept_window_min,
    unit: row.unit as Unit,
    language: row.language as NetworkSettings['language'],
    docketBelow: row.docket_below,
  }
}

export function rowFromNetwork(network: NetworkSettings): Omit<NetworkTable, 'network_key'> {
  return {
    id: network.id,
    name: network.name,
    time_zone: network.timeZone,
    reading_time: network.readingTime,
    accept_window_min: network.acceptWindowMin,
    unit: network.unit,
    language: network.language,
    docket_below: network.docketBelow,
  }
}

export function gaugeFromRow(row: GaugeTable, networkId: string): Gauge {
  return {
    id: row.id,
    networkId,
    code: row.code,
    name: row.name,
    latDeg: row.lat_deg,
    lonDeg: row.lon_deg,
    elevationM: row.elevation_m,
    area: row.area,
    observerName: row.observer_name,
    resolutionUm: row.resolution_um,
    openedOn: row.opened_on === null ? null : isoFromEpochDay(row.opened_on),
    closedOn: row.closed_on === null ? null : isoFromEpochDay(row.closed_on),
  }
}

/** Without its keys and id, which stay as they are when a gauge is saved again. */
export function rowFromGauge(gauge: Gauge): Omit<GaugeTable, 'network_key' | 'gauge_key' | 'id'> {
  return {
    code: gauge.code,
    name: gauge.name,
    lat_deg: gauge.latDeg,
    lon_deg: gauge.lonDeg,
    elevation_m: gauge.elevationM,
    area: gauge.area,
    observer_name: gauge.observerName,
    resolution_um: gauge.resolutionUm,
    opened_on: gauge.openedOn === null ? null : epochDay(gauge.openedOn),
    closed_on: gauge.closedOn === null ? null : epochDay(gauge.closedOn),
  }
}

/** Days and instants as text. Many rows share a few of each: what was said once is said again, not made anew. */
export interface RowTexts {
  day: (epochDay: number) => string
  instant: (utcMs: number) => string
}

export function rowTexts(): RowTexts {
  return { day: remembered(isoFromEpochDay), instant: remembered(formatInstant) }
}

function remembered(make: (of: number) => string): (of: number) => string {
  const known = new Map<number, string>()
  return (of) => {
    let text = known.get(of)
    if (text === undefined) {
      text = make(of)
      known.set(of, text)
    }
    return text
  }
}

export function readingFromRow(row: ReadingTable, gaugeId: string, say: RowTexts): Reading {
  return {
    id: row.id,
    gaugeId,
    kind: row.first_day === row.last_day ? 'daily' : 'multiday',
    firstDay: say.day(row.first_day),
    lastDay: say.day(row.last_day),
    amountUm: row.amount_um,
    isTrace: row.is_trace === 1,
    startsAtUtc: say.instant(row.starts_at_ms),
    endsAtUtc: say.instant(row.ends_at_ms),
    text: row.text,
    unit: row.unit as Unit,
    remark: row.remark,
    receivedAtUtc: say.instant(row.received_at_ms),
    door: row.door as Door,
    supersedes: row.supersedes,
    ...(row.confirmed !== null && { confirmed: JSON.parse(row.confirmed) as Confirmed }),
  }
}

export function decisionFromRow(row: DecisionTable): Decision {
  return {
    id: row.id,
    readingId: row.reading_id,
    verdict: row.verdict as Verdict,
    amended:
      row.amended_um === null || row.amended_first_day === null || row.amended_last_day === null
        ? null
        : {
            amountUm: row.amended_um,
            isTrace: row.amended_is_trace === 1,
            firstDay: isoFromEpochDay(row.amended_first_day),
            lastDay: isoFromEpochDay(row.amended_last_day),
          },
    by: row.by_kind === 'rule' ? { kind: 'rule', rule: row.by_name } : personFromRow(row),
    reason: row.reason,
    ...(row.mistake !== null && { mistake: row.mistake as Mistake }),
    decidedAtUtc: formatInstant(row.decided_at_ms),
    undoes: row.undoes,
  }
}

function personFromRow({ by_name, by_person }: DecisionTable): Decision['by'] {
  return { kind: 'person', name: by_name, ...(by_person !== null && { personId: by_person }) }
}

export function rowFromDecision(decision: Decision) {
  const { amended, by } = decision
  return {
    id: decision.id,
    reading_id: decision.readingId,
    verdict: decision.verdict,
    amended_um: amended?.amountUm ?? null,
    amended_is_trace: amended === null ? null : Number(amended.isTrace),
    amended_first_day: amended === null ? null : epochDay(amended.firstDay),
    amended_last_day: amended === null ? null : epochDay(amended.lastDay),
    by_kind: by.kind,
    by_name: by.kind === 'rule' ? by.rule : by.name,
    by_person: by.kind === 'rule' ? null : (by.personId ?? null),
    reason: decision.reason,
    decided_at_ms: instantMs(decision.decidedAtUtc),
    undoes: decision.undoes,
    mistake: decision.mistake ?? null,
  }
}

/** @throws {LedgerError} READING_NOT_VALID */
export function epochDay(day: string): number {
  const value = parseIsoDay(day)
  if (value === null) throw new LedgerError('READING_NOT_VALID', `"${day}" is not a real date.`, 'Give YYYY-MM-DD.')
  return value
}
