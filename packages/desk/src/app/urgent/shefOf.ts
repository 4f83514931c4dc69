/**
 * An urgent report in SHEF: rain as precipitation over minutes (PPV, DVN), snow as new snow over minutes (SFV), a gust as
 * peak wind (UP), hail as the type of precipitation (PT 9) with its size in a comment, since SHEF has no code for it. Pure.
 * Flooding and damage have none.
 */
import type { UrgentSeen } from '@gaugewright/contract'
import { encodeShefValues, inchesFromMm, inchesFromUm, type ShefText, type ShefValue } from '@gaugewright/science'

const mpsPerMph = 0.44704

export interface ShefAsk {
  seen: UrgentSeen
  seenAtMs: number
  latDeg: number
  lonDeg: number
  /** Of the gauge; null where the report has none. */
  code: string | null
}

export function shefOf(ask: ShefAsk): ShefText {
  const location = locationOf(ask)
  if (location === null) {
    return {
      kind: 'problem',
      code: 'SHEF_CANNOT_SAY',
      seen: 'a place without a code east of Greenwich or south of the equator',
      wanted: 'a gauge, or a place that SHEF can name',
    }
  }
  const value = datumOf(ask.seen)
  if (value === null) {
    return {
      kind: 'problem',
      code: 'SHEF_CANNOT_SAY',
      seen: `a report of ${ask.seen.kind} without an amount`,
      wanted: 'rain, snow, hail or a measured gust; pass it on as a storm report',
    }
  }
  return encodeShefValues([
    {
      location,
      // SHEF's clock goes to seconds.
      observedAtUtcMs: Math.floor(ask.seenAtMs / 1000) * 1000,
      createdAtUtcMs: null,
      sinceUtcMs: null,
      variable: null,
      comment: null,
      units: 'english',
      qualifier: 'Z',
      isRevision: false,
      ...value,
    },
  ])
}

/** The gauge's code where SHEF can hold it; else tenths of degrees north and west, as `X3080995`. */
function locationOf({ code, latDeg, lonDeg }: ShefAsk): string | null {
  if (code !== null && /^[A-Z0-9_]{3,8}$/.test(code)) return code
  if (latDeg < 0 || lonDeg > 0) return null
  const tenths = (degrees: number, digits: number): string =>
    String(Math.round(10 * Math.abs(degrees))).padStart(digits, '0')
  return `X${tenths(latDeg, 3)}${tenths(lonDeg, 4)}`
}

type Valued = Pick<ShefValue, 'code' | 'datum'> & Partial<ShefValue>

function datumOf(seen: UrgentSeen): Valued | null {
  switch (seen.kind) {
    case 'rain':
      return over(seen.minutes, 'PPVRZZZ', inchesFromUm(seen.amountUm).toFixed(2))
    case 'snow':
      return over(seen.minutes, 'SFVRZZZ', inchesFromMm(seen.depthMm).toFixed(1))
    case 'hail': {
      const size = `HAIL ${inchesFromMm(seen.largest.diameterMm).toFixed(2)} IN`
      const how = seen.largest.object === null ? '' : ` AS ${seen.largest.object.toUpperCase()}`
      return { code: 'PTIRZZZ', datum: number('9'), comment: `${size}${how}` }
    }
    case 'wind':
      if (seen.gustMps === null) return null
      return {
        code: 'UPIRZZZ',
        datum: number(String(Math.round(seen.gustMps / mpsPerMph))),
        qualifier: seen.by === 'measured' ? 'Z' : 'E',
      }
    case 'flooding':
      return null
  }
}

/** Up to 99 minutes as such; longer in whole hours, rounded up so that the amount did fall within. */
function over(minutes: number, code: string, text: string): Valued {
  const isShort = minutes <= 99
  const count = isShort ? Math.max(1, Math.round(minutes)) : Math.ceil(minutes / 60)
  return { code, datum: number(text), variable: { unit: isShort ? 'N' : 'H', count } }
}

function number(text: string): { kind: 'number'; value: number; text: string } {
  return { kind: 'number', value: Number(text), text }
}
