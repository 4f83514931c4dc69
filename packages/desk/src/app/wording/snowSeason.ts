/** Whether melting snow may be named among the waters that are not today's rain. */
import { dateFromEpochDay } from '@gaugewright/science'

/** Poleward of this, snow in the cold half of the year surprises nobody; equatorward a volunteer would smile (common practice). */
const LEAST_LATITUDE_DEG = 35
const coldMonths = { north: [11, 12, 1, 2, 3, 4], south: [5, 6, 7, 8, 9, 10] } as const

export function isSnowSeason(latDeg: number, epochDay: number): boolean {
  const cold: readonly number[] = latDeg >= 0 ? coldMonths.north : coldMonths.south
  return Math.abs(latDeg) >= LEAST_LATITUDE_DEG && cold.includes(dateFromEpochDay(epochDay).month)
}
