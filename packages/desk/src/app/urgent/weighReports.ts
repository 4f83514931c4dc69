/** The desk's list out of reports: severity, energy, plausibility, storms, weight, times. Pure. */
import type { UrgentItem, UrgentSettings, WireStorm } from '@gaugewright/contract'
import {
  clusterReports,
  distanceM,
  hailEnergy,
  magnitudeOf,
  type Plausibility,
  parseInstant,
  plausibilityOf,
  type SeverityLevel,
  severityOrder,
  urgentWeight,
  weighSeverity,
} from '@gaugewright/science'
import type { Gauge } from '../../ports/ledger.ts'
import { type PlacedReportNow, witnessed } from './placedReport.ts'
import { wireStorm } from './wireStorm.ts'

/** Reports further apart than this say nothing about each other. */
const reachKm = 40
const reachMs = 90 * 60_000
const silentKm = 8
/** Clocks of phones may run ahead by this much before a time of sight is not believed. */
const clockSlackMs = 120_000

export interface WeighAsk {
  reports: readonly PlacedReportNow[]
  gauges: readonly Gauge[]
  settings: UrgentSettings
  nowMs: number
}

/** @returns items by weight, the largest first, closed ones last */
export function weighReports(ask: WeighAsk): { items: UrgentItem[]; storms: WireStorm[] } {
  const byTime = [...ask.reports].sort((one, other) => one.seenAtMs - other.seenAtMs)
  const numbers = clusterReports(byTime.map((placed) => ({ ...placed, kind: placed.report.seen.kind })))
  const stormOf = new Map<number, PlacedReportNow[]>()
  for (const [index, placed] of byTime.entries()) {
    const number = numbers[index] as number
    const members = stormOf.get(number)
    if (members === undefined) stormOf.set(number, [placed])
    else members.push(placed)
  }
  const items = byTime.map((placed, index) => {
    const storm = stormOf.get(numbers[index] as number) ?? []
    const stormId = storm.length > 1 ? (storm[0]?.id ?? null) : null
    return weighReport(placed, nearInTime(byTime, index), ask, { stormId, members: storm })
  })
  items.sort(
    (one, other) => rank(one) - rank(other) || other.weight - one.weight || (one.report.id < other.report.id ? -1 : 1),
  )
  const storms = [...stormOf.values()].filter(({ length }) => length > 1).map(wireStorm)
  return { items, storms }
}

/**
 * One report as the desk shows it.
 * @param others  reports that may bear on it; itself among them or not
 */
export function weighReport(
  placed: PlacedReportNow,
  others: readonly PlacedReportNow[],
  { gauges, settings, nowMs }: Omit<WeighAsk, 'reports'>,
  storm: { stormId: string | null; members: readonly PlacedReportNow[] } = { stormId: null, members: [] },
): UrgentItem {
  const { report, latDeg, lonDeg, gauge } = placed
  const { seen } = report
  const severity = weighSeverity(seen, settings)
  const odds = oddsOf(placed, others, gauges)
  const ageMinutes = (nowMs - placed.seenAtMs) / 60_000
  return {
    report: { ...report, id: placed.id },
    receivedAtUtc: placed.receivedAtUtc,
    gauge: gauge === null ? null : { id: gauge.id, code: gauge.code, name: gauge.name, area: gauge.area },
    latDeg,
    lonDeg,
    state: placed.state,
    seenBy: placed.seenBy,
    passedOn: placed.passedOn,
    closed: placed.closed,
    severity,
    energyJ: seen.kind === 'hail' ? energyOf(seen.largest.diameterMm) : null,
    rateMmPerH: seen.kind === 'rain' || seen.kind === 'snow' ? magnitudeOf(seen) : null,
    plausibility: {
      odds: odds.asTold,
      priorOdds: odds.priorAsTold,
      near: odds.near,
      inFavour: odds.inFavour,
      nearestKm: odds.nearestKm,
    },
    stormId: storm.stormId,
    weight: urgentWeight({
      level: severity.level,
      ratio: severity.ratio,
      odds: odds.asTold,
      ageMinutes,
      isGoingOn: seen.isGoingOn === true,
      passedOnLevel: passedOnLevel(placed, storm.members, settings),
    }),
    secondsToDesk: secondsBetween(placed.seenAtMs, placed.receivedAtUtc),
    secondsToSeen: secondsBetween(placed.seenAtMs, placed.seenBy[0]?.atUtc),
    secondsToPassedOn: secondsBetween(placed.seenAtMs, placed.passedOn[0]?.atUtc),
  }
}

function rank({ state }: UrgentItem): number {
  return state === 'closed' ? 1 : 0
}

function energyOf(diameterMm: number): { low: number; high: number } {
  const { lowJ, highJ } = hailEnergy(diameterMm)
  return { low: lowJ, high: highJ }
}

function oddsOf(placed: PlacedReportNow, others: readonly PlacedReportNow[], gauges: readonly Gauge[]): Plausibility {
  const near = others.flatMap((other) => {
    if (other.id === placed.id || Math.abs(other.latDeg - placed.latDeg) > reachKm / 110) return []
    const distanceKm = kmBetween(placed, other)
    return distanceKm > reachKm ? [] : [{ ...witnessed(other), distanceKm }]
  })
  const told = new Set(others.map(({ gauge }) => gauge?.id))
  const silent = gauges.flatMap((gauge) => {
    if (gauge.observerName === null || gauge.id === placed.gauge?.id || told.has(gauge.id)) return []
    if (Math.abs(gauge.latDeg - placed.latDeg) > silentKm / 110) return []
    const km = kmBetween(placed, gauge)
    return km > silentKm ? [] : [km]
  })
  return plausibilityOf(witnessed(placed), near, silent)
}

function kmBetween(one: { latDeg: number; lonDeg: number }, other: { latDeg: number; lonDeg: number }): number {
  return distanceM(one.latDeg, one.lonDeg, other.latDeg, other.lonDeg) / 1000
}

/** Those within reach in time of the one at `index`, itself among them. */
function nearInTime(byTime: readonly PlacedReportNow[], index: number): PlacedReportNow[] {
  const at = (byTime[index] as PlacedReportNow).seenAtMs
  let first = index
  let last = index
  while (first > 0 && at - (byTime[first - 1] as PlacedReportNow).seenAtMs <= reachMs) first--
  while (last < byTime.length - 1 && (byTime[last + 1] as PlacedReportNow).seenAtMs - at <= reachMs) last++
  return byTime.slice(first, last + 1)
}

/** Gravest level at which another report of the storm was passed on. */
function passedOnLevel(
  placed: PlacedReportNow,
  members: readonly PlacedReportNow[],
  settings: UrgentSettings,
): SeverityLevel | null {
  let gravest = -1
  for (const member of members) {
    if (member.id === placed.id || member.passedOn.length === 0) continue
    if (member.report.seen.kind !== placed.report.seen.kind) continue
    gravest = Math.max(gravest, severityOrder.indexOf(weighSeverity(member.report.seen, settings).level))
  }
  return severityOrder[gravest] ?? null
}

/** Null where the later instant is not yet, or lies before the earlier one by more than clocks may differ. */
function secondsBetween(fromMs: number, toUtc: string | undefined): number | null {
  const toMs = toUtc === undefined ? null : parseInstant(toUtc)
  if (toMs === null || toMs < fromMs - clockSlackMs) return null
  return Math.max(0, toMs - fromMs) / 1000
}
