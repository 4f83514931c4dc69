import type { WireStorm } from '@gaugewright/contract'
import { formatInstant, stormTrack } from '@gaugewright/science'
import type { PlacedReportNow } from './placedReport.ts'

/** A storm as the desk shows it. @param members  its reports, oldest first, at least one */
export function wireStorm(members: readonly PlacedReportNow[]): WireStorm {
  const first = members[0] as PlacedReportNow
  const last = members.at(-1) as PlacedReportNow
  const track = stormTrack(members.map((placed) => ({ ...placed, kind: placed.report.seen.kind })))
  const stones = members.flatMap(({ report: { seen } }) => (seen.kind === 'hail' ? [seen.largest.diameterMm] : []))
  const middle = {
    latDeg: members.reduce((sum, { latDeg }) => sum + latDeg, 0) / members.length,
    lonDeg: members.reduce((sum, { lonDeg }) => sum + lonDeg, 0) / members.length,
  }
  return {
    id: first.id,
    reportIds: members.map(({ id }) => id),
    firstSeenAtUtc: formatInstant(first.seenAtMs),
    lastSeenAtUtc: formatInstant(last.seenAtMs),
    largestStoneMm: stones.length === 0 ? null : Math.max(...stones),
    from: track?.from ?? middle,
    to: track?.to ?? middle,
    track:
      track === null
        ? null
        : {
            speedKmPerH: track.speedKmPerH,
            speedRangeKmPerH: { low: track.speedLowKmPerH, high: track.speedHighKmPerH },
            towardDeg: track.towardDeg,
            towardPlusMinusDeg: track.towardPlusMinusDeg,
          },
  }
}
