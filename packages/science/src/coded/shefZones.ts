/**
 * Time zones of SHEF: one letter is the clock on the wall, with summer time; two letters a fixed distance from UTC; none
 * is UTC. [SHEF2012] 4.1.5, Table 8.
 */
import { Temporal } from 'temporal-polyfill'
import { daysInMonth, epochDayFromDate } from '../reading/epochDay.ts'
import { msPerDay, msPerHour, msPerMinute } from '../reading/instant.ts'

const zones: Readonly<Record<string, string>> = {
  Z: 'UTC',
  N: 'America/St_Johns',
  A: 'America/Halifax',
  E: 'America/New_York',
  C: 'America/Chicago',
  M: 'America/Denver',
  P: 'America/Los_Angeles',
  Y: 'America/Whitehorse',
  L: 'America/Anchorage',
  H: 'Pacific/Honolulu',
  B: '-11:00',
  J: 'Asia/Shanghai',
  NS: '-03:30',
  AD: '-03:00',
  AS: '-04:00',
  ED: '-04:00',
  ES: '-05:00',
  CD: '-05:00',
  CS: '-06:00',
  MD: '-06:00',
  MS: '-07:00',
  PD: '-07:00',
  PS: '-08:00',
  YD: '-07:00',
  YS: '-08:00',
  LD: '-08:00',
  LS: '-09:00',
  HS: '-10:00',
  BD: '-10:00',
  BS: '-11:00',
}

/** A zone for Temporal, or null where the letters name none. */
export function shefZone(letters: string): string | null {
  return Object.hasOwn(zones, letters) ? (zones[letters] as string) : null
}

const MOST_KNOWN = 5000
const knownInstants = new Map<string, number>()

/** Time on the wall; hour 24 is the next day's 0. */
export interface WallTime {
  year: number
  month: number
  day: number
  hour: number
  minute: number
  second: number
}

/** The instant of a time on the wall, or null where there is no such date or time. Of two, the first; of none, the later. */
export function instantOfWall(wall: WallTime, zone: string): number | null {
  const isEndOfDay = wall.hour === 24 && wall.minute === 0 && wall.second === 0
  if (wall.year < 1000 || wall.hour > 24 || (wall.hour === 24 && !isEndOfDay)) return null
  const { year, month, day, hour, minute, second } = wall
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month) || minute > 59 || second > 59) return null
  const inUtcMs =
    epochDayFromDate(year, month, day) * msPerDay + hour * msPerHour + minute * msPerMinute + second * 1000
  if (zone === 'UTC') return inUtcMs
  // A table says the same few times over and over, and each look into the zones costs some ten microseconds.
  const key = `${zone} ${inUtcMs}`
  const known = knownInstants.get(key)
  if (known !== undefined) return known
  const found = instantInZone(wall, zone, isEndOfDay)
  if (knownInstants.size >= MOST_KNOWN) knownInstants.clear()
  if (found !== null) knownInstants.set(key, found)
  return found
}

function instantInZone(wall: WallTime, zone: string, isEndOfDay: boolean): number | null {
  try {
    const plain = Temporal.PlainDateTime.from({ ...wall, hour: isEndOfDay ? 0 : wall.hour }, { overflow: 'reject' })
    return (isEndOfDay ? plain.add({ days: 1 }) : plain).toZonedDateTime(zone).epochMilliseconds
  } catch (error) {
    if (error instanceof RangeError) return null
    throw error
  }
}

/** The time on the wall at an instant. */
export function wallOfInstant(utcMs: number, zone: string): WallTime {
  const { year, month, day, hour, minute, second } =
    Temporal.Instant.fromEpochMilliseconds(utcMs).toZonedDateTimeISO(zone)
  return { year, month, day, hour, minute, second }
}
