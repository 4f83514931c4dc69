/** How quickly offers are answered and come to a first reading: those who sent a first one stay ([Bonter2023]). Pure. */
import type { Candidate, PeopleDesk } from '@gaugewright/contract'
import { quantile } from '@gaugewright/science'

const HOUR_MS = 3_600_000
/** Younger offers have not had their time. */
const RIPE_DAYS = 60

export function offerFigures(candidates: readonly Candidate[], nowUtc: string): PeopleDesk['figures'] {
  const hours: number[] = []
  const days: number[] = []
  let ripe = 0
  let reached = 0
  for (const { offeredAtUtc, firstAnswerAtUtc, firstReadingOn } of candidates) {
    const from = Date.parse(offeredAtUtc)
    if (firstAnswerAtUtc !== null) hours.push((Date.parse(firstAnswerAtUtc) - from) / HOUR_MS)
    if (firstReadingOn !== null) days.push(Math.max(0, (Date.parse(firstReadingOn) - from) / (24 * HOUR_MS)))
    if ((Date.parse(nowUtc) - from) / (24 * HOUR_MS) < RIPE_DAYS) continue
    ripe++
    if (firstReadingOn !== null) reached++
  }
  const median = (values: number[]) => (values.length === 0 ? null : quantile(values, 0.5))
  return {
    medianHoursToAnswer: median(hours),
    medianDaysToReading: median(days),
    readingShare: ripe === 0 ? null : reached / ripe,
    offers: candidates.length,
    waiting: candidates.filter(({ isOverdue }) => isOverdue).length,
  }
}
