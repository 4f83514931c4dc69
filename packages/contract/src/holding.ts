/** Keeping observers: who is going quiet, whom to thank, one's own roll, pages to print or send. JSON on the wire. */
import { z } from 'zod'

const who = {
  gaugeId: z.string(),
  code: z.string(),
  gaugeName: z.string(),
  name: z.string(),
  personId: z.string().nullable(),
}
export const quietRowSchema = z.object({
  ...who,
  key: z.string(),
  probability: z.number(),
  changedOn: z.string(),
  before: z.number(),
  since: z.number(),
  /** The last sixty days, oldest first: `a` answered, `c` covered by a total, `w` away, `s` silent, `-` not expected. */
  strip: z.string(),
  /** A word to send, in the observer's language. */
  text: z.string(),
})
export const occasionRowSchema = z.object({
  ...who,
  key: z.string(),
  kind: z.enum(['first reading', 'readings', 'years', 'whole dry month', 'storm']),
  day: z.string(),
  /** What the occasion is, in the observer's language. */
  text: z.string(),
})
export const holdingSchema = z.object({
  /** The last observing day that is looked at. */
  day: z.string(),
  quiet: z.array(quietRowSchema),
  occasions: z.array(occasionRowSchema),
  /** Answered in the last days, newest first: can be taken back. */
  answered: z.array(
    z.object({ id: z.string(), code: z.string(), name: z.string(), key: z.string(), how: z.enum(['sent', 'not now']) }),
  ),
})
export type Holding = z.infer<typeof holdingSchema>
export type QuietRow = z.infer<typeof quietRowSchema>
export type OccasionRow = z.infer<typeof occasionRowSchema>

export const answerOccasionAskSchema = z.union([
  z.object({ code: z.string().min(1).max(100), key: z.string().min(1).max(100), how: z.enum(['sent', 'not now']) }),
  z.object({ undo: z.string().min(1).max(100) }),
])
export type AnswerOccasionAsk = z.infer<typeof answerOccasionAskSchema>

export const rollAskSchema = z.object({ gauge: z.string().min(1).max(100) })
export const rollOfGaugeSchema = z.object({
  code: z.string(),
  lastDay: z.string(),
  /** Up to 371 days, oldest first, as in `strip`. */
  strip: z.string(),
  answeredShare: z.number().nullable(),
  currentStreak: z.number().int(),
  longestStreak: z.number().int(),
  longestGap: z.object({ firstDay: z.string(), days: z.number().int() }).nullable(),
  /** Local hour of reading, minutes after midnight: middle and the span of half of them; null where too few. */
  hour: z.object({ medianMin: z.number(), lowMin: z.number(), highMin: z.number() }).nullable(),
})
export type RollAsk = z.infer<typeof rollAskSchema>
export type RollOfGauge = z.infer<typeof rollOfGaugeSchema>

/** `2026-05` or `2026`. */
export const periodSchema = z.string().regex(/^\d{4}(-(0[1-9]|1[0-2]))?$/, 'a month such as 2026-05, or a year')
export const leafAskSchema = z.object({ gauge: z.string().min(1).max(100), period: periodSchema })
export const networkLetterAskSchema = z.object({
  period: periodSchema,
  /** A paragraph of the coordinator's own. */
  words: z.string().max(2000).default(''),
  /** Whether observers are named. */
  names: z.enum(['yes', 'no']).default('no'),
})
export type LeafAsk = z.infer<typeof leafAskSchema>
export type NetworkLetterAsk = z.infer<typeof networkLetterAskSchema>
