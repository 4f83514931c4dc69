/** Habits of gauges: what their readings show over the years. Shapes on the wire (JSON); amounts in mm, chances 0 to 1. */
import { habitKinds } from '@gaugewright/science'
import { z } from 'zod'

const day = z.iso.date()
export const habitKindSchema = z.enum(habitKinds)

const networkSchema = z.object({
  id: z.string(),
  name: z.string(),
  unit: z.enum(['mm', 'in']),
  timeZone: z.string(),
  readingTime: z.string(),
  language: z.enum(['en', 'es']),
})

const gaugeSchema = z.object({
  gaugeId: z.string(),
  code: z.string(),
  name: z.string(),
  area: z.string().nullable(),
  observerName: z.string().nullable(),
  elevationM: z.number().nullable(),
})

/** What a gauge's readings show of one kind. Units of the figures by kind: HabitKind in science. */
export const habitSchema = z.object({
  kind: habitKindSchema,
  value: z.number(),
  /** Central 80 % of what it may be in truth. */
  low: z.number(),
  high: z.number(),
  /** The middle gauge of the network. */
  usual: z.number(),
  /** Chance that it is strong enough to matter, and whether that is sure enough to be told. */
  sure: z.number(),
  isHabit: z.boolean(),
  strength: z.number(),
  readings: z.number().int(),
  /** What is seen, and what may be done about it, kindly; in the network's language. */
  sentence: z.string(),
  advice: z.string(),
})

export const networkHabitsSchema = z.object({
  network: networkSchema,
  firstDay: day,
  lastDay: day,
  /** Of the days looked at, the latest that were judged for dates, totals and mistakes; 0 where too few or too many. */
  judgedDays: z.number().int(),
  /** Every gauge, the one with the strongest habit first; only habits that are told. */
  gauges: z.array(
    gaugeSchema.extend({
      readings: z.number().int(),
      strength: z.number(),
      habits: z.array(habitSchema),
    }),
  ),
})

export const gaugeHabitsAskSchema = z.object({ gauge: z.string().min(1).max(200) })

export const gaugeHabitsSchema = gaugeSchema.extend({
  network: networkSchema,
  firstDay: day,
  lastDay: day,
  judgedDays: z.number().int(),
  readings: z.number().int(),
  /** All kinds that can be told of, the strongest first, those that are no habit last. */
  habits: z.array(habitSchema),
  /** Agreement with the gauges around by day lag: this gauge's day against theirs so many days later. */
  agreement: z.array(
    z.object({ lagDays: z.number().int(), value: z.number().nullable(), error: z.number().nullable() }),
  ),
  /** Last digits 0 to 9 of amounts of `fromSteps` steps or more, and what unrounded amounts would have. */
  lastDigits: z.object({
    stepMm: z.number(),
    fromSteps: z.number().int(),
    counts: z.array(z.number()),
    expected: z.array(z.number()),
  }),
  /** Wet amounts by class, up to so many mm (null: no end), own and of the gauges around on the same days. */
  amounts: z.array(z.object({ belowMm: z.number().nullable(), own: z.number(), around: z.number() })),
  /** Undeclared totals by the weekday on which they end, Monday first; null where days were not judged. */
  carriedByWeekday: z.array(z.number()).nullable(),
  /** Values of the network's gauges at 5, 25, 50, 75 and 95 %, by kind. */
  spread: z.partialRecord(habitKindSchema, z.array(z.number())),
  /** What the odds of its readings already allow for: its offset, and the share of misdated or carried taken as its way. */
  allowedFor: z.object({ offsetDays: z.number(), takenAsHabit: z.number(), sentence: z.string().nullable() }),
  /** Readings of the last year that a person decided about; null where none. */
  decided: z.object({ mistaken: z.number().int(), standing: z.number().int() }).nullable(),
})

export type WireHabit = z.infer<typeof habitSchema>
export type NetworkHabitsAnswer = z.infer<typeof networkHabitsSchema>
export type GaugeHabitsAsk = z.infer<typeof gaugeHabitsAskSchema>
export type GaugeHabitsAnswer = z.infer<typeof gaugeHabitsSchema>
