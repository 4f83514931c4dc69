/** The coded text of a report: a storm report bulletin or SHEF, with its place by the nearest town of the map. */
import type { PassOnForm, UrgentSettings } from '@gaugewright/contract'
import { encodeStormBulletin, parseInstant, placeFromTown } from '@gaugewright/science'
import type { Gauge, NetworkSettings } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'
import { type Answer, answered, refused } from '../answer.ts'
import type { ReportNow } from './foldEvents.ts'
import { areaAt, townsOf } from './mapPlaces.ts'
import { placedReport } from './placedReport.ts'
import { shefOf } from './shefOf.ts'
import { stormReportOf } from './stormReportOf.ts'

export interface CodedText {
  text: string
  /** Fields that did not fit their columns and were cut. */
  cut: string[]
}

export interface CodedAsk {
  network: NetworkSettings
  gauges: readonly Gauge[]
  settings: UrgentSettings
  now: ReportNow
  form: PassOnForm
}

export async function codedText(
  ports: Pick<Ports, 'ledger' | 'clock'>,
  { network, gauges, settings, now, form }: CodedAsk,
): Promise<Answer<CodedText>> {
  const placed = placedReport(now, new Map(gauges.map((gauge) => [gauge.id, gauge])))
  if (placed === null) {
    return refused('GAUGE_NOT_IN_NETWORK', 'a report from a gauge that is not here', 'Pass it on by telephone.')
  }
  const { latDeg, lonDeg, seenAtMs, gauge } = placed
  const { seen, remark, where } = now.report
  if (form === 'SHEF') {
    const shef = shefOf({ seen, seenAtMs, latDeg, lonDeg, code: gauge?.code ?? null })
    if (shef.kind === 'text') return answered({ text: shef.text, cut: [] })
    return refused(shef.code, shef.seen, `SHEF takes ${shef.wanted}.`)
  }
  const layers = await ports.ledger.layers(network.id)
  const named = gauge?.name ?? (where.kind === 'place' ? where.name : null) ?? 'UNKNOWN PLACE'
  const report = stormReportOf({
    seen,
    seenAtMs,
    latDeg,
    lonDeg,
    place: placeFromTown({ latDeg, lonDeg }, townsOf(layers)) ?? named,
    county: gauge?.area ?? areaAt(layers, latDeg, lonDeg) ?? '',
    state: settings.stateCode,
    remark,
    severeSnowMmPerH: settings.severeSnowMmPerH,
  })
  const office = { name: settings.officeName || network.name, timeZone: network.timeZone }
  return answered(encodeStormBulletin([report], office, { atUtcMs: parseInstant(ports.clock.nowUtc()) ?? seenAtMs }))
}
