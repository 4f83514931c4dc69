/**
 * The office's rule, where it has set one: a report that is grave and plausible enough goes on without a person, once to the
 * rule's destination for each filing. A new report may make earlier ones near it likely enough: they are looked at again.
 */
import type { UrgentItem } from '@gaugewright/contract'
import { distanceM, parseInstant, severityOrder } from '@gaugewright/science'
import type { NetworkSettings } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'
import { codedText } from './codedText.ts'
import { NearReports } from './nearReports.ts'
import type { PlacedReportNow } from './placedReport.ts'
import { queuePassOn } from './queuePassOn.ts'
import { urgentBoard } from './urgentBoard.ts'
import { urgentSettingsOf } from './usualUrgentSettings.ts'
import { weighReport } from './weighReports.ts'

const reachKm = 40
const reachMs = 90 * 60_000

export async function applyPassOnRule(
  ports: Pick<Ports, 'ledger' | 'urgent' | 'outbox' | 'clock' | 'newId'>,
  network: NetworkSettings,
  reportId: string,
): Promise<void> {
  const settings = await urgentSettingsOf(ports, network.id)
  const rule = settings.passOnRule
  const destination = settings.destinations.find(({ name }) => name === rule?.destination)
  if (rule === null || destination === undefined) return
  const { reports, gauges } = await urgentBoard(ports, network.id)
  const filed = reports.find(({ id }) => id === reportId)
  if (filed === undefined) return
  const around = reports.filter((other) => isNear(filed, other))
  const near = new NearReports(reports, gauges)
  const nowMs = parseInstant(ports.clock.nowUtc()) ?? 0
  const least = severityOrder.indexOf(rule.atLeast)
  const isMeant = ({ severity, plausibility }: UrgentItem): boolean =>
    severityOrder.indexOf(severity.level) >= least && plausibility.odds >= rule.oddsAtLeast
  for (const placed of around) {
    if (placed.closed !== null || wasPassedOn(placed, destination.name)) continue
    if (!isMeant(weighReport(placed, near, { settings, nowMs }))) continue
    const coded = await codedText(ports, { network, gauges, settings, now: placed, form: rule.form })
    if (!coded.ok) continue
    const doer = { by: 'rule', byPersonId: null }
    await queuePassOn(ports, { network, now: placed, form: rule.form, destination, text: coded.value.text, doer })
  }
}

/** To this destination since its newest filing came. */
function wasPassedOn({ passedOn, filedAtUtc }: PlacedReportNow, destination: string): boolean {
  return passedOn.some(({ to, atUtc }) => to === destination && atUtc >= filedAtUtc)
}

function isNear(one: PlacedReportNow, other: PlacedReportNow): boolean {
  if (Math.abs(one.seenAtMs - other.seenAtMs) > reachMs) return false
  return distanceM(one.latDeg, one.lonDeg, other.latDeg, other.lonDeg) <= reachKm * 1000
}
