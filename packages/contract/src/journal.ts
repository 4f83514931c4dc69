/** What the entries of the journal hold, by kind. Whoever reads an entry reads it against these. */
import { drillReasons, drillSkills } from '@gaugewright/science'
import { z } from 'zod'
import { contactWaySchema } from './contacts.ts'
import { drillSettingsSchema } from './drills.ts'
import { letterStepSchema } from './letters.ts'
import { offerPageWordsSchema } from './offerPage.ts'
import { offerSchema, offerStateSchema } from './offers.ts'
import { surveyPhotoSchema, yardPlanSchema } from './surveys.ts'

export const journalBodies = {
  /** About a candidate. */
  offer: z.object({ offer: offerSchema, door: z.enum(['public page', 'desk', 'command line', 'import']) }),
  'offer changed': z.object({ offer: offerSchema }),
  'address confirmed': z.object({}),
  /** Digest of the secret in the link to the person's own page. */
  'own link': z.object({ digest: z.string(), endsAtUtc: z.string() }),
  state: z.object({ state: offerStateSchema, why: z.string() }),
  'gauge given': z.object({
    gaugeId: z.string(),
    personId: z.string(),
    isNewPerson: z.boolean(),
    isNewGauge: z.boolean(),
  }),
  /** About a candidate or a person. */
  contact: z.object({ way: contactWaySchema, text: z.string(), outgoingId: z.string().nullable() }),
  /** About the network. */
  'letter template': z.object({
    step: letterStepSchema,
    language: z.enum(['en', 'es']),
    subject: z.string(),
    text: z.string(),
  }),
  'offer page': offerPageWordsSchema,
  /** About a gauge or a candidate. */
  survey: z.object({
    surveyedOn: z.iso.date(),
    note: z.string(),
    plan: yardPlanSchema,
    photos: z.array(surveyPhotoSchema),
  }),
  'survey asked': z.object({ why: z.string() }),
  /** About a person or a candidate. */
  sitting: z.object({
    seed: z.number(),
    unit: z.enum(['mm', 'in']),
    passMark: z.number(),
    answers: z.array(
      z.object({
        skill: z.enum(drillSkills),
        text: z.string(),
        isRight: z.boolean(),
        reason: z.enum(drillReasons).nullable(),
      }),
    ),
  }),
  'refresher asked': z.object({}),
  /** About a gauge. */
  'occasion answered': z.object({ key: z.string(), how: z.enum(['sent', 'not now']) }),
  'drill settings': drillSettingsSchema,
} as const

export type JournalKind = keyof typeof journalBodies
export type JournalBody<K extends JournalKind> = z.infer<(typeof journalBodies)[K]>
