/**
 * How one gauge's readings lie over its observing days: which day is covered by what, and each overlap, gap, repeat and
 * total as a note that can be worded. Made by arrangeReadings.ts; worded by wordArrangementNote.ts.
 */
import type { IsoDay } from './reading.ts'

export interface Arrangement {
  /** Every day of the range asked for, in order. */
  days: DayCover[]
  /** In order of their first day. */
  notes: ArrangementNote[]
}

/**
 * `read`: one daily reading. `in total`: inside one total over several days. `silent`: no reading. `disputed`: readings
 * that cannot all be right; a person decides.
 */
export type DayState = 'read' | 'in total' | 'silent' | 'disputed'

export interface DayCover {
  day: IsoDay
  state: DayState
  /** Every reading that covers the day. */
  readingIds: string[]
  /** The reading that the day's amount is taken from; null when silent or disputed. */
  countedId: string | null
}

interface NoteDays {
  firstDay: IsoDay
  lastDay: IsoDay
}

export type ArrangementNote =
  /** A total over several days: no amount is known for its single days. */
  | ({ code: 'TOTAL_OVER_DAYS'; readingId: string; dayCount: number } & NoteDays)
  /** The same interval and amount more than once. The first counts. */
  | ({ code: 'READING_REPEATED'; readingIds: string[] } & NoteDays)
  /** The same interval with different amounts. */
  | ({ code: 'READINGS_DISAGREE'; readingIds: string[]; lowestUm: number; highestUm: number } & NoteDays)
  /** A total whose days were also read one by one, to the same sum. The single readings count. */
  | ({ code: 'TOTAL_REPEATS_DAYS'; totalId: string; readingIds: string[] } & NoteDays)
  /** A total with readings inside it that make up less, over `restDayCount` days fewer. `restUm` is what remains. */
  | ({
      code: 'TOTAL_HOLDS_READINGS'
      totalId: string
      readingIds: string[]
      restUm: number
      restDayCount: number
    } & NoteDays)
  /** A total smaller than the readings inside it, by `shortUm`. */
  | ({ code: 'TOTAL_BELOW_READINGS'; totalId: string; readingIds: string[]; shortUm: number } & NoteDays)
  /** Two totals that share some days and neither holds the other. The days are the shared ones. */
  | ({ code: 'TOTALS_CROSS'; readingIds: [string, string]; dayCount: number } & NoteDays)
  /** Days without a reading. The reading after them, if any, may hold their water. */
  | ({ code: 'DAYS_SILENT'; dayCount: number; nextReadingId: string | null; nextDay: IsoDay | null } & NoteDays)
  /** Neighbouring readings whose real intervals share some time. */
  | ({ code: 'INTERVALS_OVERLAP'; readingIds: [string, string]; minutes: number } & NoteDays)
  /** Neighbouring readings with time between them that belongs to neither. */
  | ({ code: 'INTERVALS_LEAVE_GAP'; readingIds: [string, string]; minutes: number } & NoteDays)
