/** An urgent report as a local storm report says it: English, in inches and miles an hour, without any name. Pure. */
import type { UrgentSeen } from '@gaugewright/contract'
import {
  inchesFromMm,
  inchesFromUm,
  type StormEvent,
  type StormMagnitude,
  type StormReport,
} from '@gaugewright/science'

const mpsPerMph = 0.44704

export interface StormReportAsk {
  seen: UrgentSeen
  seenAtMs: number
  latDeg: number
  lonDeg: number
  place: string
  county: string
  state: string
  remark: string | null
  /** Snow from this rate on is heavy. */
  severeSnowMmPerH: number
}

export function stormReportOf(ask: StormReportAsk): StormReport {
  const { seen, seenAtMs, latDeg, lonDeg, place, county, state } = ask
  return {
    happenedAtUtcMs: seenAtMs,
    event: eventOf(seen, ask.severeSnowMmPerH),
    magnitude: magnitude(seen),
    place,
    latDeg,
    lonDeg,
    county,
    state,
    source: 'PUBLIC',
    remark: remarkOf(seen, ask.remark),
  }
}

function eventOf(seen: UrgentSeen, severeSnowMmPerH: number): StormEvent {
  switch (seen.kind) {
    case 'hail':
      return 'HAIL'
    case 'rain':
      return 'HEAVY RAIN'
    case 'flooding':
      return seen.isFast === true || seen.isRising === true ? 'FLASH FLOOD' : 'FLOOD'
    case 'wind':
      return seen.gustMps === null ? 'TSTM WND DMG' : 'TSTM WND GST'
    case 'snow':
      return (60 * seen.depthMm) / seen.minutes >= severeSnowMmPerH ? 'HEAVY SNOW' : 'SNOW'
  }
}

function magnitude(seen: UrgentSeen): StormMagnitude | null {
  switch (seen.kind) {
    case 'hail': {
      const { diameterMm, by } = seen.largest
      return { value: inchesFromMm(diameterMm), unit: 'INCH', how: by === 'object' ? 'E' : 'M' }
    }
    case 'rain':
      return { value: inchesFromUm(seen.amountUm), unit: 'INCH', how: 'M' }
    case 'snow':
      return { value: inchesFromMm(seen.depthMm), unit: 'INCH', how: 'M' }
    case 'wind':
      if (seen.gustMps === null) return null
      return { value: seen.gustMps / mpsPerMph, unit: 'MPH', how: seen.by === 'measured' ? 'M' : 'E' }
    case 'flooding':
      return null
  }
}

function remarkOf(seen: UrgentSeen, remark: string | null): string | null {
  const said = [...partsOf(seen), ...(seen.damage.length > 0 ? [`damage: ${seen.damage.join(', ')}`] : [])]
  if (seen.isGoingOn === true) said.push('still going on when reported')
  const words = said.length > 0 ? `${said.join('. ')}.` : ''
  return [words, remark ?? ''].filter((text) => text !== '').join(' ') || null
}

function partsOf(seen: UrgentSeen): string[] {
  switch (seen.kind) {
    case 'hail':
      return [
        seen.largest.object === null ? null : `largest as a ${seen.largest.object}`,
        seen.typical === null ? null : `typical ${inchesFromMm(seen.typical.diameterMm).toFixed(2)} inch`,
        seen.smallest === null ? null : `smallest ${inchesFromMm(seen.smallest.diameterMm).toFixed(2)} inch`,
        seen.shape === null ? null : `shape ${seen.shape}`,
        seen.groundCover === null ? null : `ground: ${seen.groundCover}`,
      ].filter((text) => text !== null)
    case 'rain':
      return [`in ${seen.minutes} minutes`]
    case 'snow':
      return [`in ${seen.minutes} minutes`]
    case 'flooding':
      return [
        `water on or in: ${seen.things.join(', ')}`,
        seen.depth === null ? null : `depth: ${seen.depth}`,
        seen.isRising === null ? null : seen.isRising ? 'rising' : 'not rising',
        seen.isFast === true ? 'fast' : null,
      ].filter((text) => text !== null)
    case 'wind':
      return []
  }
}
