/** What leaves the desk in open formats: the accepted record as CSV, one day's gauges as GeoJSON (RFC 7946). */
import { z } from 'zod'

const day = z.iso.date()

/** The accepted record of `from`…`to` (both included; all of it by default), amounts in `unit` (the network's by default). */
export const exportAcceptedAskSchema = z.object({
  from: day.optional(),
  to: day.optional(),
  unit: z.enum(['mm', 'in']).optional(),
})

/** The accepted record of a day as SHEF. `source`: who sends it, as a SHEF location. */
export const exportShefAskSchema = z.object({
  source: z.string().regex(/^[A-Z0-9_]{3,8}$/, '3 to 8 of A-Z, 0-9 and _'),
  unit: z.enum(['mm', 'in']).optional(),
})

/** Positions are rounded to two decimals unless exact ones were asked for on the command line; observers are not named. */
export const exportedDaySchema = z.object({
  type: z.literal('FeatureCollection'),
  features: z.array(
    z.object({
      type: z.literal('Feature'),
      id: z.string(),
      geometry: z.object({ type: z.literal('Point'), coordinates: z.array(z.number()).min(2).max(3) }),
      properties: z.object({
        gauge: z.string(),
        name: z.string(),
        day,
        answer: z.string(),
        amountMm: z.number().nullable(),
        isTrace: z.boolean(),
        days: z.number().int(),
        standsOdds: z.number().nullable(),
        decision: z.string().nullable(),
      }),
    }),
  ),
})

/** The letter that asks an observer to look once more, ready to copy. */
export const draftMessageSchema = z.object({
  readingId: z.string(),
  observerName: z.string().nullable(),
  message: z.string(),
})

export type ExportAcceptedAsk = z.infer<typeof exportAcceptedAskSchema>
export type ExportShefAsk = z.infer<typeof exportShefAskSchema>
export type ExportedDay = z.infer<typeof exportedDaySchema>
export type DraftMessage = z.infer<typeof draftMessageSchema>
