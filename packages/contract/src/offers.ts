/** Offers to observe, from the public page to the first reading. JSON on the wire. */
import { z } from 'zod'

/** In the order in which an offer comes along; `closed` ends it at any place. */
export const offerStates = [
  'offered',
  'answered',
  'site agreed',
  'gauge in hand',
  'trained',
  'reading',
  'closed',
] as const
export const offerStateSchema = z.enum(offerStates)
export type OfferState = z.infer<typeof offerStateSchema>

/** Days that an offer usually rests in a state at most; beyond it somebody waits. Common practice: a first reading soon. */
export const usualStateDays: Record<OfferState, number | null> = {
  offered: 2,
  answered: 14,
  'site agreed': 14,
  'gauge in hand': 14,
  trained: 7,
  reading: null,
  closed: null,
}

export const yardKinds = ['open', 'some trees', 'built-up', 'other'] as const

const line = (most: number) => z.string().trim().max(most)
export const offerSchema = z.object({
  name: line(120).min(1, 'a name'),
  /** Lower case; null where the person has none. */
  mail: z
    .string()
    .trim()
    .max(254)
    .toLowerCase()
    .pipe(z.email({ message: 'not a mail address' }))
    .nullable()
    .default(null),
  /** As it was typed. */
  phone: line(40).nullable().default(null),
  language: z.enum(['en', 'es']).default('en'),
  /** Where, in the person's words. */
  place: line(300).min(1, 'where the gauge would stand'),
  /** Where it was put on the map; null where it was only typed. */
  latDeg: z.number().min(-90).max(90).nullable().default(null),
  lonDeg: z.number().min(-180).max(180).nullable().default(null),
  yard: z.enum(yardKinds).default('other'),
  yardWords: line(1000).default(''),
  /** Local hour at which they can read, `07:00`; null where any. */
  readingTime: z
    .string()
    .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'an hour such as 07:00')
    .nullable()
    .default(null),
  hours: line(500).default(''),
})
export type Offer = z.infer<typeof offerSchema>

export const offerEventSchema = z.object({
  id: z.string(),
  state: offerStateSchema,
  why: z.string(),
  atUtc: z.string(),
  /** Name of who did it; empty where nobody is known: the person themself, the desk, somebody forgotten. */
  by: z.string(),
  isTakenBack: z.boolean(),
})

export const candidateSchema = z.object({
  id: z.string(),
  offer: offerSchema,
  offeredAtUtc: z.string(),
  door: z.enum(['public page', 'desk', 'command line', 'import']),
  /** When the person followed the link in the mail that answered the offer. */
  addressConfirmedAtUtc: z.string().nullable(),
  state: offerStateSchema,
  sinceUtc: z.string(),
  ageDays: z.number(),
  /** Rests longer than is usual in its state. */
  isOverdue: z.boolean(),
  /** State that comes next; null where there is none. */
  next: offerStateSchema.nullable(),
  /** Oldest first, those taken back too. */
  events: z.array(offerEventSchema),
  firstAnswerAtUtc: z.string().nullable(),
  firstReadingOn: z.string().nullable(),
  gauge: z.object({ id: z.string(), code: z.string(), name: z.string() }).nullable(),
  personId: z.string().nullable(),
})
export type Candidate = z.infer<typeof candidateSchema>

/** One who reads a gauge. */
export const observerRowSchema = z.object({
  gaugeId: z.string(),
  code: z.string(),
  gaugeName: z.string(),
  /** Null where nobody has an entry among people. */
  personId: z.string().nullable(),
  name: z.string(),
  mail: z.string().nullable(),
  phone: z.string().nullable(),
  language: z.enum(['en', 'es']),
  lastReadingOn: z.string().nullable(),
  /** Share of the last 28 expected mornings that were answered; null where none was expected. */
  answeredShare: z.number().nullable(),
})
export type ObserverRow = z.infer<typeof observerRowSchema>

export const offerFiguresSchema = z.object({
  /** Over all offers that got that far; null where none did. */
  medianHoursToAnswer: z.number().nullable(),
  medianDaysToReading: z.number().nullable(),
  /** Of offers older than 60 days, those that reached a first reading; null where there is none. */
  readingShare: z.number().nullable(),
  offers: z.number().int(),
  waiting: z.number().int(),
})

export const peopleDeskSchema = z.object({
  network: z.object({ id: z.string(), name: z.string(), unit: z.enum(['mm', 'in']), language: z.enum(['en', 'es']) }),
  today: z.string(),
  candidates: z.array(candidateSchema),
  observers: z.array(observerRowSchema),
  figures: offerFiguresSchema,
})
export type PeopleDesk = z.infer<typeof peopleDeskSchema>

export const addOfferAskSchema = z.object({ id: z.string().min(1).max(100).optional(), offer: offerSchema })
export type AddOfferAsk = z.infer<typeof addOfferAskSchema>

const candidateId = z.string().min(1).max(100)
export const changeOfferAskSchema = z.object({ candidateId, offer: offerSchema })
export const moveOfferAskSchema = z.object({
  candidateId,
  state: offerStateSchema,
  why: z.string().trim().max(500).default(''),
})
export const undoOfferAskSchema = z.object({ candidateId, eventId: z.string().min(1).max(100) })
/** A gauge that is there (its code), or a new one. */
export const giveGaugeAskSchema = z.object({
  candidateId,
  gauge: z.union([
    z.object({ code: z.string().trim().min(1).max(100) }),
    z.object({
      name: z.string().trim().min(1).max(120),
      latDeg: z.number().min(-90).max(90),
      lonDeg: z.number().min(-180).max(180),
      elevationM: z.number().min(-500).max(9000).nullable().default(null),
    }),
  ]),
})
export const forgetCandidateAskSchema = z.object({ candidateId })
export type ChangeOfferAsk = z.infer<typeof changeOfferAskSchema>
export type MoveOfferAsk = z.infer<typeof moveOfferAskSchema>
export type UndoOfferAsk = z.infer<typeof undoOfferAskSchema>
export type GiveGaugeAsk = z.infer<typeof giveGaugeAskSchema>
export type ForgetCandidateAsk = z.infer<typeof forgetCandidateAskSchema>
