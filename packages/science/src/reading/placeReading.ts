/**
 * Which observing day a reading belongs to, by the time at which the gauge was really read. Within the accept window
 * around the reading hour it counts as the day's; outside it the amount is kept, but with its real interval, and stays
 * out of same-day comparison with its neighbours. Source of the window (two hours either way): common practice.
 */
import type { EpochDay } from './epochDay.ts'
import { msPerMinute } from './instant.ts'
import type { ObservingDays } from './observingDay.ts'

/**
 * `on time`: within the window. `early`, `late`: outside it, but nearer to this reading hour than the limit.
 * `off hour`: read at another time of day altogether.
 */
export type Timing = 'on time' | 'early' | 'late' | 'off hour'

export interface AcceptWindow {
  /** Minutes before and after the reading hour within which a reading is the day's. */
  beforeMin: number
  afterMin: number
  /** Minutes from the reading hour up to which a reading is called early or late; off hour beyond. */
  limitMin: number
}

export const usualWindow: AcceptWindow = { beforeMin: 120, afterMin: 120, limitMin: 360 }

export interface PlacedReading {
  day: EpochDay
  timing: Timing
  /** Real minutes after the reading hour of that day; negative before it. */
  offsetMin: number
  /** The interval that the amount was really caught in: after the start, up to and including the end. */
  startUtcMs: number
  endUtcMs: number
  /** True where the amount may stand beside its neighbours' amounts of the same day: both ends within the window. */
  isDays: boolean
}

/**
 * @param readAtUtcMs     when the gauge was read and emptied
 * @param emptiedAtUtcMs  when it was emptied before that; null where not known, then the reading hour that opens the day
 * @returns the day: that of the nearest reading hour for a reading on time, early or late; for one off hour, the day
 *          that the instant falls in. An amount over several days keeps its real start; see arrangeReadings.ts.
 */
export function placeReading(
  days: ObservingDays,
  readAtUtcMs: number,
  emptiedAtUtcMs: number | null,
  window: AcceptWindow = usualWindow,
): PlacedReading {
  const within = days.dayOf(readAtUtcMs)
  const sinceStartMs = readAtUtcMs - days.endUtcMs(within - 1)
  const untilEndMs = days.endUtcMs(within) - readAtUtcMs
  const nearest = sinceStartMs < untilEndMs ? within - 1 : within
  const nearestOffsetMin = (readAtUtcMs - days.endUtcMs(nearest)) / msPerMinute
  const timing = timingOf(nearestOffsetMin, window)
  const day = timing === 'off hour' ? within : nearest
  const startUtcMs = emptiedAtUtcMs ?? Math.min(days.endUtcMs(day - 1), readAtUtcMs)
  const startOffsetMin = (startUtcMs - days.endUtcMs(day - 1)) / msPerMinute
  return {
    day,
    timing,
    offsetMin: (readAtUtcMs - days.endUtcMs(day)) / msPerMinute,
    startUtcMs,
    endUtcMs: readAtUtcMs,
    isDays: timing === 'on time' && timingOf(startOffsetMin, window) === 'on time',
  }
}

function timingOf(offsetMin: number, window: AcceptWindow): Timing {
  if (offsetMin >= -window.beforeMin && offsetMin <= window.afterMin) return 'on time'
  if (Math.abs(offsetMin) > window.limitMin) return 'off hour'
  return offsetMin < 0 ? 'early' : 'late'
}
