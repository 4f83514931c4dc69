/** The desk's list out of reports: severity, energy, plausibility, storms, weight, times. Pure. */
import type { UrgentItem, UrgentSettings, WireStorm } from '@gaugewright/contract'
import {
  clusterReports,
  hailEnergy,
  magnitudeOf,
  parseInstant,
  plausibilityOf,
  type SeverityLevel,
  severityOrder,
  urgentWeight,
  weighSeverity,
} from '@gaugewright/science'
import type { Gauge } from '../../ports/ledger.ts'
import { NearReports } from './nearReports.ts'
import { type PlacedReportNow, witnessed } from './placedReport.ts'
import { wireStorm } from './wireStorm.ts'

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
  const near = new NearReports(ask.reports, ask.gauges)
  const passedOn = new Map([...stormOf].map(([number, members]) => [number, passedOnLevels(members, ask.settings)]))
  const items = byTime.map((placed, index) => {
    const storm = stormOf.get(numbers[index] as number) ?? []
    const stormId = storm.length > 1 ? (storm[0]?.id ?? null) : null
    return weighReport(placed, near, ask, { stormId, passedOn: passedOn.get(numbers[index] as number) ?? [] })
  })
  items.sort(
    (one, other) => rank(one) - rank(other) || other.weight - one.weight || (one.report.id < other.report.id ? -1 : 1),
  )
  const storms = [...stormOf.values()].filter(({ length }) => length > 1).map(wireStorm)
  return { items, storms }
}

/**
 * One report as the desk shows it.
 * @param near  the reports that may bear on it; itself among them or not
 */
export function weighReport(
  placed: PlacedReportNow,
  near: NearReports,
  { settings, nowMs }: Pick<WeighAsk, 'settings' | 'nowMs'>,
  storm: { stormId: string | null; passedOn: readonly PassedOnLevel[] } = { stormId: null, passedOn: [] },
): UrgentItem {
  const { report, latDeg, lonDeg, gauge } = placed
  const { seen } = report
  const severity = weighSeverity(seen, settings)
  const odds = plausibilityOf(witnessed(placed), near.around(placed), near.silentAround(placed))
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
      passedOnLevel: gravestOfOthers(placed, storm.passedOn),
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

interface PassedOnLevel {
  id: string
  kind: UrgentItem['report']['seen']['kind']
  level: SeverityLevel
}

function passedOnLevels(members: readonly PlacedReportNow[], settings: UrgentSettings): PassedOnLevel[] {
  return members.flatMap(({ id, passedOn, report: { seen } }) =>
    passedOn.length === 0 ? [] : [{ id, kind: seen.kind, level: weighSeverity(seen, settings).level }],
  )
}

/** Gravest level at which another report of the storm, of the same kind, was passed on. */
function gravestOfOthers({ id, report }: PlacedReportNow, passedOn: readonly PassedOnLevel[]): SeverityLevel | null {
  let gravest = -1
  for (const other of passedOn) {
    if (other.id === id || other.kind !== report.seen.kind) continue
    gravest = Math.max(gravest, severityOrder.indexOf(other.level))
  }
  return severityOrder[gravest] ?? null
}

/** Null where the later instant is not yet, or lies before the earlier one by more than clocks may differ. */
function secondsBetween(fromMs: number, toUtc: string | undefined): number | null {
  const toMs = toUtc === undefined ? null : parseInstant(toUtc)
  if (toMs === null || toMs < fromMs - clockSlackMs) return null
  return Math.max(0, toMs - fromMs) / 1000
}
