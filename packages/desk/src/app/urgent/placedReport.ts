import type { UrgentSeen } from '@gaugewright/contract'
import { magnitudeOf, parseInstant, type WitnessedReport } from '@gaugewright/science'
import type { Gauge } from '../../ports/ledger.ts'
import type { ReportNow } from './foldEvents.ts'

/** A report with its place: that of its gauge, or as told. */
export interface PlacedReportNow extends ReportNow {
  gauge: Gauge | null
  latDeg: number
  lonDeg: number
  seenAtMs: number
}

/** @returns null where its gauge is none of the network's (any more) */
export function placedReport(now: ReportNow, gauges: ReadonlyMap<string, Gauge>): PlacedReportNow | null {
  const { where, seenAtUtc } = now.report
  const gauge = where.kind === 'gauge' ? (gauges.get(where.gaugeId) ?? null) : null
  const place = where.kind === 'place' ? where : gauge
  if (place === null) return null
  return { ...now, gauge, latDeg: place.latDeg, lonDeg: place.lonDeg, seenAtMs: parseInstant(seenAtUtc) ?? 0 }
}

const witnesses = new WeakMap<PlacedReportNow, WitnessedReport>()

export function witnessed(placed: PlacedReportNow): WitnessedReport {
  const before = witnesses.get(placed)
  if (before !== undefined) return before
  const { latDeg, lonDeg, seenAtMs, witness, report } = placed
  const { seen } = report
  const magnitude = magnitudeOf(seen)
  const told = { kind: seen.kind, latDeg, lonDeg, seenAtMs, witness, magnitude, by: measureOf(seen) }
  witnesses.set(placed, told)
  return told
}

function measureOf(seen: UrgentSeen): WitnessedReport['by'] {
  switch (seen.kind) {
    case 'hail':
      return seen.largest.by
    case 'wind':
      return seen.by
    case 'rain':
    case 'snow':
      return 'measured'
    case 'flooding':
      return null
  }
}
