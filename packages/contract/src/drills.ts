/** Drills: sittings of observers and candidates, the pass mark, refreshers. JSON on the wire. */
import { drillReasons, drillSkills } from '@gaugewright/science'
import { z } from 'zod'

const skill = z.enum(drillSkills)
const id = z.string().min(1).max(100)
/** What was answered, in the order in which it was asked; the desk makes the same drills from the seed, and marks anew. */
export const sittingAskSchema = z.object({
  id,
  seed: z
    .number()
    .int()
    .min(0)
    .max(2 ** 31),
  unit: z.enum(['mm', 'in']),
  answers: z.array(z.string().max(60)).min(1).max(40),
})
export type SittingAsk = z.infer<typeof sittingAskSchema>
/** The same for whoever holds the link to an own offer. */
export const mySittingAskSchema = sittingAskSchema.extend({ secret: z.string().min(20).max(200) })
export type MySittingAsk = z.infer<typeof mySittingAskSchema>

export const sittingSchema = z.object({
  id: z.string(),
  atUtc: z.string(),
  rightShare: z.number(),
  isPassed: z.boolean(),
  answers: z.array(z.object({ skill, isRight: z.boolean(), reason: z.enum(drillReasons).nullable() })),
  skills: z.array(z.object({ skill, right: z.number().int(), asked: z.number().int() })),
  repeat: z.array(skill),
})
export type Sitting = z.infer<typeof sittingSchema>

export const drillSettingsSchema = z.object({
  /** Share of right answers, 0.5 to 1. */
  passMark: z.number().min(0.5).max(1),
  /** Whether observers who have not passed begin with the odds of the untrained. */
  isRequired: z.boolean(),
})
export type DrillSettings = z.infer<typeof drillSettingsSchema>

export const drillsOfPersonSchema = z.object({
  about: z.string(),
  settings: drillSettingsSchema,
  /** Newest first. */
  sittings: z.array(sittingSchema),
  /** Asked for and not done since; or the last pass is over a year old. */
  refresher: z.enum(['none', 'asked', 'yearly']),
  /** Factor on the usual odds of a mistake with which this observer begins, before readings tell more; 1 is usual. */
  startingFactor: z.number(),
})
export type DrillsOfPerson = z.infer<typeof drillsOfPersonSchema>

export const drillsAskSchema = z.object({
  about: z.string().regex(/^(candidate|person) \S{1,100}$/, 'candidate ID or person ID'),
})
export type DrillsAsk = z.infer<typeof drillsAskSchema>

export const drillsDueSchema = z.object({
  settings: drillSettingsSchema,
  people: z.array(
    z.object({
      about: z.string(),
      name: z.string(),
      passedOn: z.string().nullable(),
      refresher: z.enum(['none', 'asked', 'yearly']),
    }),
  ),
})
export type DrillsDue = z.infer<typeof drillsDueSchema>
