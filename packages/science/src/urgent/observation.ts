/** What was seen, as the science needs it: structurally a part of the contract's urgent report. */
export type UrgentObservation =
  | { kind: 'hail'; largest: { diameterMm: number; by: 'ruler' | 'object' | 'phone ruler' }; damage: readonly string[] }
  | { kind: 'rain'; amountUm: number; minutes: number; damage: readonly string[] }
  | {
      kind: 'flooding'
      things: readonly string[]
      depth: 'ankle' | 'knee' | 'waist' | 'above waist' | null
      isRising: boolean | null
      isFast: boolean | null
      damage: readonly string[]
    }
  | { kind: 'wind'; gustMps: number | null; by: 'measured' | 'estimated' | null; damage: readonly string[] }
  | { kind: 'snow'; depthMm: number; minutes: number; damage: readonly string[] }

export type ObservedKind = UrgentObservation['kind']

/** Against which a report is held: the office sets them. */
export interface SeverityThresholds {
  severeHailMm: number
  significantHailMm: number
  severeGustMps: number
  severeSnowMmPerH: number
  guidance: readonly { minutes: number; amountUm: number }[]
}

/**
 * Where the office has set nothing: hail 1.00 in and 2.00 in, gust 58 mph, snow 1 in/h [NWSHail]; rain 1.00 in
 * in an hour and amounts that grow with the duration about as flash-flood guidance does (common practice; set your own).
 */
export const usualThresholds: SeverityThresholds = {
  severeHailMm: 25.4,
  significantHailMm: 50.8,
  severeGustMps: 25.93,
  severeSnowMmPerH: 25.4,
  guidance: [
    { minutes: 15, amountUm: 15_240 },
    { minutes: 60, amountUm: 25_400 },
    { minutes: 180, amountUm: 38_100 },
    { minutes: 360, amountUm: 50_800 },
  ],
}

/**
 * How large it was, as one positive number that grows with it, so that reports of a kind compare: stone in mm, gust in m/s,
 * rates in mm/h. Null where nothing was measured (flooding, damage by wind).
 */
export function magnitudeOf(seen: UrgentObservation): number | null {
  switch (seen.kind) {
    case 'hail':
      return seen.largest.diameterMm
    case 'rain':
      return (0.06 * seen.amountUm) / seen.minutes
    case 'wind':
      return seen.gustMps
    case 'snow':
      return (60 * seen.depthMm) / seen.minutes
    case 'flooding':
      return null
  }
}
