/** Urgent reports in the terminal: one line each, the weightiest first, and the storms. Pure. */
import type { UrgentItem, UrgentNow, UrgentSeen, WireStorm } from '@gaugewright/contract'
import { formatAmount } from '@gaugewright/science'
import { plainTable } from './plainTable.ts'

export function printUrgent(now: UrgentNow): string {
  const { network, items, newCount, storms } = now
  const heading = `${network.name}: ${items.length} urgent reports, ${newCount} new`
  if (items.length === 0) return `${heading}\n`
  const table = plainTable(['level', 'state', 'what', 'place', 'seen', 'likely', 'to desk', 'id'])
  for (const item of items) {
    table.push([
      item.severity.level,
      item.state,
      urgentWhat(item.report.seen, network.unit),
      placeOf(item),
      item.report.seenAtUtc,
      `${Math.round(100 * item.plausibility.odds)} %`,
      item.secondsToDesk === null ? '?' : `${Math.round(item.secondsToDesk)} s`,
      item.report.id,
    ])
  }
  const more = now.hiddenCount > 0 ? [`${now.hiddenCount} less weighty ones are not shown.`] : []
  return `${[heading, table.toString(), ...storms.map(stormLine), ...more].join('\n')}\n`
}

export function urgentWhat(seen: UrgentSeen, unit: 'mm' | 'in'): string {
  const amount = (amountUm: number): string => formatAmount({ amountUm, isTrace: false }, unit, 'en', 'full')
  switch (seen.kind) {
    case 'hail': {
      const { diameterMm, by, object } = seen.largest
      const size = unit === 'in' ? `${(diameterMm / 25.4).toFixed(2)} in` : `${Math.round(diameterMm)} mm`
      return `hail ${size} (${object ?? by})`
    }
    case 'rain':
      return `rain ${amount(seen.amountUm)} in ${seen.minutes} min`
    case 'snow':
      return `snow ${amount(Math.round(1000 * seen.depthMm))} in ${seen.minutes} min`
    case 'wind':
      return seen.gustMps === null ? 'wind damage' : `gust ${seen.gustMps.toFixed(0)} m/s`
    case 'flooding':
      return `flooding: ${seen.things.join(', ')}`
  }
}

function placeOf({ gauge, report, latDeg, lonDeg }: UrgentItem): string {
  const named = report.where.kind === 'place' ? report.where.name : null
  return gauge === null ? (named ?? `${latDeg.toFixed(2)}, ${lonDeg.toFixed(2)}`) : `${gauge.code} ${gauge.name}`
}

function stormLine({ reportIds, track, lastSeenAtUtc }: WireStorm): string {
  const told = `storm of ${reportIds.length} reports, last seen ${lastSeenAtUtc}`
  if (track === null) return told
  const { low, high } = track.speedRangeKmPerH
  const speed = `${track.speedKmPerH.toFixed(0)} km/h (${low.toFixed(0)} to ${high.toFixed(0)})`
  return `${told}, moves toward ${track.towardDeg.toFixed(0)}° (± ${track.towardPlusMinusDeg.toFixed(0)}°) at ${speed}`
}
