/**
 * What a local storm report line says, before it is text. Words are those of the published lists in [LSR]; free text is
 * folded to the characters a bulletin may carry.
 */

/** Event names of local storm reports. Source: [LSR]. */
export const stormEvents = [
  'HAIL',
  'RAIN',
  'HEAVY RAIN',
  'FLOOD',
  'FLASH FLOOD',
  'SNOW',
  'HEAVY SNOW',
  'SLEET',
  'FREEZING RAIN',
  'ICE STORM',
  'TSTM WND GST',
  'TSTM WND DMG',
  'FUNNEL CLOUD',
  'TORNADO',
  'LIGHTNING',
] as const
export type StormEvent = (typeof stormEvents)[number]

/** Who told: the words seen in bulletins. Another text may stand for them. Source: [LSR]. */
export const stormSources = [
  'TRAINED SPOTTER',
  'PUBLIC',
  'LAW ENFORCEMENT',
  'EMERGENCY MNGR',
  'FIRE DEPT/RESCUE',
  'AMATEUR RADIO',
  'CO-OP OBSERVER',
  'BROADCAST MEDIA',
  'DEPT OF HIGHWAYS',
  'MESONET',
] as const

export interface StormMagnitude {
  /** In `unit`; null for a trace. */
  value: number | null
  unit: 'INCH' | 'MPH'
  /** By ruler or gauge `M`, by object or eye `E`, not known `U`. */
  how: 'M' | 'E' | 'U'
}

export interface StormReport {
  happenedAtUtcMs: number
  event: StormEvent
  magnitude: StormMagnitude | null
  /** Miles, 16-point direction and place, `2 SSE SOMETOWN`: as `placeFromTown` words it. */
  place: string
  latDeg: number
  lonDeg: number
  county: string
  /** Two letters. */
  state: string
  source: string
  remark: string | null
}

export interface StormOffice {
  /** Second line of the bulletin, e.g. `WEATHER DESK AMBREL`. */
  name: string
  /** IANA zone of the times in the lines. */
  timeZone: string
  /** How the zone is called in the heading, by whether clocks are put forward; `UTC` offset words if left out. */
  zoneWords?: { standard: string; daylight: string } | undefined
  /** Lines above the title, such as a WMO heading; as they are to stand. */
  heading?: readonly string[] | undefined
}
