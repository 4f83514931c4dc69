/** Occasions for a word of thanks, from what an observer has sent. Each has a key, so that it is thanked for once. Pure. */
export type Occasion =
  | { kind: 'first reading'; key: string; day: number }
  | { kind: 'readings'; key: string; day: number; count: number }
  | { kind: 'years'; key: string; day: number; years: number }
  | { kind: 'whole dry month'; key: string; day: number; days: number }
  | { kind: 'storm'; key: string; day: number; sharpenedShare: number; rank: number }

export const readingMilestones = [100, 365, 500, 1000, 2000, 3000, 5000, 10_000] as const

export interface OccasionsAsk {
  /** Epoch days on which readings ended, ascending. */
  readingDays: ArrayLike<number>
  today: number
  /** Occasions older than this are past. Default 30. */
  withinDays?: number
}

/** @returns what came about within the last days, newest first; storms and months are told by others */
export function countedOccasions({ readingDays, today, withinDays = 30 }: OccasionsAsk): Occasion[] {
  const found: Occasion[] = []
  const isRecent = (day: number) => day <= today && today - day <= withinDays
  const count = readingDays.length
  if (count > 0 && isRecent(readingDays[0]!))
    found.push({ kind: 'first reading', key: 'first reading', day: readingDays[0]! })
  for (const milestone of readingMilestones) {
    const day = readingDays[milestone - 1]
    if (day !== undefined && isRecent(day))
      found.push({ kind: 'readings', key: `readings ${milestone}`, day, count: milestone })
  }
  if (count > 0) {
    const years = Math.floor((today - readingDays[0]!) / 365.2425)
    const day = Math.ceil(readingDays[0]! + years * 365.2425)
    const isReading = today - readingDays[count - 1]! <= withinDays
    if (years >= 1 && isRecent(day) && isReading) found.push({ kind: 'years', key: `years ${years}`, day, years })
  }
  return found.sort((a, b) => b.day - a.day)
}
