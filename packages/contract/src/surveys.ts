/** Surveys of sites: yard plans with their dates, and what follows from them. JSON on the wire. Exact plans are private. */
import { hazardKinds, obstacleKinds, type YardPlan } from '@gaugewright/science'
import { z } from 'zod'
import { photoLimits } from './photoLimits.ts'

/** In mm; what a photo said of its angle of view, for angles are measured by it. Null where it did not say. */
const equivalentMm = z.number().positive().max(5000).nullable()
export const surveyPhotoSchema = z.object({ sha256: z.string(), equivalentMm })
/** A whole JPEG, PNG or WebP file; kept without where and with what it was taken. */
export const newSurveyPhotosSchema = z
  .array(z.object({ imageBase64: z.base64().max(Math.ceil(photoLimits.bytes / 3) * 4), equivalentMm }))
  .max(photoLimits.perReport)
  .default([])
export type SurveyPhoto = z.infer<typeof surveyPhotoSchema>
export type NewSurveyPhoto = z.infer<typeof newSurveyPhotosSchema>[number]

/** Numbers that cannot be are named by the science (checkYard), one line each; here only sizes are bounded. */
const point = z.object({ xM: z.number(), yM: z.number() })
const ring = z.array(point).max(200).readonly()
const id = z.string().min(1).max(100)
const name = z.string().max(120)
const shape = z.discriminatedUnion('form', [
  z.object({ form: z.literal('ring'), ring, topM: z.number() }),
  z.object({
    form: z.literal('gable'),
    ring,
    eavesM: z.number(),
    ridge: z.tuple([point, point]).readonly(),
    ridgeM: z.number(),
  }),
  z.object({ form: z.literal('round'), center: point, radiusM: z.number(), topM: z.number() }),
  z.object({ form: z.literal('line'), points: ring, topM: z.number() }),
  z.object({
    form: z.literal('bearing'),
    seenFrom: point,
    bearingDeg: z.number(),
    distanceM: z.number(),
    topM: z.number(),
    widthDeg: z.number(),
  }),
])
export const yardPlanSchema = z.object({
  outline: ring,
  obstacles: z
    .array(z.object({ id, kind: z.enum(obstacleKinds), name, shape }))
    .max(200)
    .readonly(),
  hazards: z
    .array(z.object({ id, kind: z.enum(hazardKinds), name, at: point, reachM: z.number().nullable() }))
    .max(100)
    .readonly(),
  slopeDeg: z.number().nullable(),
  gauge: z.object({ at: point, rimM: z.number(), hasWindShield: z.boolean() }).nullable(),
}) satisfies z.ZodType<YardPlan>

/** What site: `gauge CODE` or `candidate ID`. */
export const aboutSiteSchema = z.string().regex(/^(candidate|gauge) \S{1,100}$/, 'gauge CODE or candidate ID')
const day = z.iso.date()

export const surveySchema = z.object({
  id: z.string(),
  about: z.string(),
  surveyedOn: day,
  savedAtUtc: z.string(),
  by: z.string(),
  note: z.string(),
  plan: yardPlanSchema,
  photos: z.array(surveyPhotoSchema),
  isTakenBack: z.boolean(),
  /** What the plan says; null where no gauge stands on it yet. */
  exposure: z
    .object({ class: z.number().int().min(1).max(5), worstDeg: z.number(), blockedShare: z.number() })
    .nullable(),
})
export type Survey = z.infer<typeof surveySchema>

export const surveyDueSchema = z.enum(['never surveyed', 'asked', 'overdue', 'due', 'not yet'])
export const siteSchema = z.object({
  about: z.string(),
  name: z.string(),
  unit: z.enum(['mm', 'in']),
  language: z.enum(['en', 'es']),
  today: day,
  due: surveyDueSchema,
  /** Newest first, those taken back too. */
  surveys: z.array(surveySchema),
})
export type Site = z.infer<typeof siteSchema>

export const readSiteAskSchema = z.object({ about: aboutSiteSchema })
export const saveSurveyAskSchema = z.object({
  about: aboutSiteSchema,
  id,
  surveyedOn: day,
  note: z.string().trim().max(2000).default(''),
  plan: yardPlanSchema,
  photos: newSurveyPhotosSchema,
})
export const withdrawSurveyAskSchema = z.object({
  about: aboutSiteSchema,
  surveyId: id,
  undo: z.boolean().default(false),
})
export const askSurveyAskSchema = z.object({
  about: aboutSiteSchema,
  why: z.string().trim().min(1, 'a reason').max(500),
})
export type ReadSiteAsk = z.infer<typeof readSiteAskSchema>
export type SaveSurveyAsk = z.infer<typeof saveSurveyAskSchema>
export type WithdrawSurveyAsk = z.infer<typeof withdrawSurveyAskSchema>
export type AskSurveyAsk = z.infer<typeof askSurveyAskSchema>

export const sitesDueSchema = z.object({
  today: day,
  sites: z.array(
    z.object({
      about: z.string(),
      code: z.string(),
      name: z.string(),
      due: surveyDueSchema,
      surveyedOn: day.nullable(),
      class: z.number().int().nullable(),
      why: z.string(),
    }),
  ),
})
export type SitesDue = z.infer<typeof sitesDueSchema>
