/** The public page on which people offer to observe, and the page of their own that they get. JSON on the wire. */
import { z } from 'zod'
import { candidateSchema, offerSchema, offerStateSchema } from './offers.ts'
import { newSurveyPhotosSchema, yardPlanSchema } from './surveys.ts'

/** Paragraphs of plain text, parted by empty lines. */
const pageText = z.string().trim().max(4000)
export const offerPageWordsSchema = z.object({
  isOpen: z.boolean(),
  en: pageText,
  es: pageText,
  /** Closed offers are erased after so many months. */
  keepMonths: z.number().int().min(1).max(120),
})
export const offerPageSettingsSchema = offerPageWordsSchema.extend({
  versions: z.array(z.object({ id: z.string(), atUtc: z.string(), by: z.string() })),
})
export type OfferPageWords = z.infer<typeof offerPageWordsSchema>
export type OfferPageSettings = z.infer<typeof offerPageSettingsSchema>

/** What keeps robots away: a signed instant, and work that takes a phone a second and a flood for ever. */
export const offerTicketSchema = z.object({
  ticket: z.string(),
  /** SHA-256 of `ticket.nonce` must begin with this many zero bits. */
  zeroBits: z.number().int(),
})
export type OfferTicket = z.infer<typeof offerTicketSchema>

export const offerPageSchema = z.object({
  network: z.string(),
  language: z.enum(['en', 'es']),
  isOpen: z.boolean(),
  words: z.object({ en: z.string(), es: z.string() }),
  /** Closed offers are erased after so many months. */
  keepMonths: z.number().int(),
  /** Rivers, outlines and areas of the base map, and towns by name: no gauges. */
  map: z.array(z.object({ name: z.string(), kind: z.enum(['area', 'river', 'outline']), geojson: z.unknown() })),
  places: z.array(z.object({ name: z.string(), latDeg: z.number(), lonDeg: z.number() })),
  /** Degrees: west, south, east, north of the gauges, coarsened; to put a place on the map. */
  bounds: z.tuple([z.number(), z.number(), z.number(), z.number()]).nullable(),
  ticket: offerTicketSchema,
})
export type OfferPage = z.infer<typeof offerPageSchema>

export const makeOfferAskSchema = z.object({
  /** Made by the browser: the same offer twice is one. */
  id: z.uuid(),
  offer: offerSchema.refine(({ mail, phone }) => mail !== null || phone !== null, {
    message: 'a mail address or a telephone number, so that somebody can answer',
    path: ['mail'],
  }),
  ticket: z.string().max(300),
  nonce: z.string().max(40),
  /** A field that people do not see. */
  website: z.string().max(500).default(''),
})
export const offerMadeSchema = z.object({ received: z.literal(true) })
export type MakeOfferAsk = z.infer<typeof makeOfferAskSchema>
export type OfferMade = z.infer<typeof offerMadeSchema>

const secret = z.string().min(20).max(200)
export const myOfferAskSchema = z.object({ secret })
export const changeMyOfferAskSchema = z.object({ secret, offer: offerSchema })
export const saveMyYardAskSchema = z.object({
  secret,
  id: z.string().min(1).max(100),
  plan: yardPlanSchema,
  note: z.string().trim().max(2000).default(''),
  photos: newSurveyPhotosSchema,
})
export const myOfferSchema = z.object({
  network: z.string(),
  unit: z.enum(['mm', 'in']),
  offer: offerSchema,
  state: offerStateSchema,
  sinceUtc: z.string(),
  isAddressConfirmed: z.boolean(),
  /** Share of right answers that passes the drills. */
  passMark: z.number(),
  /** The yard as last drawn; null before that. */
  plan: yardPlanSchema.nullable(),
  /** Photos that were kept with yards. */
  photoCount: z.number().int(),
})
export type MyOfferAsk = z.infer<typeof myOfferAskSchema>
export type ChangeMyOfferAsk = z.infer<typeof changeMyOfferAskSchema>
export type SaveMyYardAsk = z.infer<typeof saveMyYardAskSchema>
export type MyOffer = z.infer<typeof myOfferSchema>
export const offerGoneSchema = z.object({ gone: z.literal(true) })
export type OfferGone = z.infer<typeof offerGoneSchema>
export const candidatesSchema = z.object({ candidates: z.array(candidateSchema) })
export type Candidates = z.infer<typeof candidatesSchema>
