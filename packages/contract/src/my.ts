/**
 * My gauge: what an observer's phone asks and sends. Every ask names a gauge that the asker holds; no answer ever holds
 * anything of another gauge. Shapes on the wire (JSON); days ISO, instants RFC 3339 in UTC, amounts in whole micrometres.
 */
import { mistakes } from '@gaugewright/science'
import { z } from 'zod'
import { surveyDueSchema } from './surveys.ts'

const day = z.iso.date()
const unit = z.enum(['mm', 'in'])
const amountUm = z.number().int().nonnegative()

/** A reading of one's own, as it stands on the page. */
export const myReadingSchema = z.object({
  id: z.string(),
  firstDay: day,
  lastDay: day,
  endsAtUtc: z.string(),
  amountUm,
  isTrace: z.boolean(),
  text: z.string(),
  unit,
  remark: z.string().nullable(),
  receivedAtUtc: z.string(),
  /** True where it corrects an earlier one, which is kept. */
  isCorrection: z.boolean(),
})

/** What is usual at this gauge alone, for the check on a phone without a signal. Arrays of a Climate of one gauge. */
export const ownClimateSchema = z.object({
  resolutionMm: z.number(),
  /** How its amounts are rounded when read. */
  rounding: z.object({ writtenMm: z.number(), stepsMm: z.array(z.number()), share: z.array(z.number()) }),
  /** 12 months. */
  dryShare: z.array(z.number()),
  scaleMm: z.array(z.number()),
  /** 12 months of the pooled wet amounts. */
  wetScore: z.array(z.number()),
  mistakeRate: z.number(),
  tubeMm: z.number(),
})

export const absenceSchema = z.object({ id: z.string(), firstDay: day, lastDay: day })

export const myGaugeSchema = z.object({
  network: z.object({
    name: z.string(),
    unit,
    timeZone: z.string(),
    readingTime: z.string(),
    acceptWindowMin: z.number(),
    language: z.enum(['en', 'es']),
  }),
  gauge: z.object({
    code: z.string(),
    name: z.string(),
    observerName: z.string().nullable(),
    resolutionUm: z.number().int().nullable(),
  }),
  /** The newest first, of the last weeks. */
  readings: z.array(myReadingSchema),
  /** Of the gauge, past ones left out. */
  absences: z.array(absenceSchema),
  /** Null until there is a record to learn from. */
  climate: ownClimateSchema.nullable(),
  /** Whether the place of the gauge is to be looked at anew. */
  siteDue: surveyDueSchema,
  nowUtc: z.string(),
  /** True for the demo, which stands still on its one morning: then `nowUtc` is the page's time, not the phone's. */
  standsStill: z.boolean(),
})

/** The gauges that whoever asks reads. */
export const myGaugesSchema = z.object({ gauges: z.array(z.object({ code: z.string(), name: z.string() })) })

export const entryMistakeSchema = z.enum(mistakes)

/** The observer was asked back, looked at the gauge again, and then gave this amount. */
export const confirmedSchema = z.object({
  about: z.array(entryMistakeSchema).max(4),
  /** What stood there first; the same as the reading's text where it was kept. */
  firstText: z.string().max(80),
})

/** Amount as typed: a number, `T`, or fills of the tube joined by ` + `. */
const typed = z.string().min(1).max(80)

export const newReadingSchema = z.object({
  /** Made on the phone: the same reading sent twice is stored once. */
  id: z.uuid(),
  firstDay: day,
  lastDay: day,
  /** When the gauge was read; null: at the reading hour of the last day (days entered together afterwards). */
  readAtUtc: z.iso.datetime().nullable(),
  text: typed,
  unit,
  remark: z.string().trim().max(500).nullable().default(null),
  confirmed: confirmedSchema.nullable().default(null),
  /** The own reading that this one corrects. */
  corrects: z.string().max(80).nullable().default(null),
})

/** All or none, in this order. */
export const sendReadingsAskSchema = z.object({
  gauge: z.string().max(40),
  readings: z.array(newReadingSchema).min(1).max(62),
})
export const sentReadingsSchema = z.object({
  /** Each reading sent: stored now, or there already. */
  received: z.array(z.object({ id: z.string(), isNew: z.boolean() })),
  receivedAtUtc: z.string(),
})

export const checkEntryAskSchema = z.object({
  gauge: z.string().max(40),
  firstDay: day,
  lastDay: day,
  text: typed,
  unit,
})

/**
 * What to ask back about; nothing where the amount may well be right. An alternative follows from what was typed alone
 * (a point moved, the other unit, digits swapped, a tube more) and is null where only a second look helps.
 */
export const entryQuestionSchema = z.object({
  alternatives: z.array(z.object({ kind: entryMistakeSchema, amountUm: amountUm.nullable() })).max(2),
})
export const checkedEntrySchema = z.object({ question: entryQuestionSchema.nullable() })

export const announceAbsenceAskSchema = z.object({ gauge: z.string().max(40), firstDay: day, lastDay: day })
/** `absence`: its id. Days that have passed stay announced; the others are expected to be read again. */
export const withdrawAbsenceAskSchema = z.object({ gauge: z.string().max(40), absence: z.string().max(200) })
export const announcedAbsenceSchema = z.object({ absences: z.array(absenceSchema) })

/** Absences that stand, for the desk: those that have not passed, or all of one gauge. */
export const listAbsencesAskSchema = z.object({ gauge: z.string().max(40).optional() })
export const networkAbsencesSchema = z.object({
  absences: z.array(
    absenceSchema.extend({
      code: z.string(),
      gaugeName: z.string(),
      announcedAtUtc: z.string(),
      /** Null while it stands. */
      withdrawnAtUtc: z.string().nullable(),
    }),
  ),
})

const sumSchema = z.object({
  totalUm: amountUm,
  /** Only traces fell. */
  isTrace: z.boolean(),
  wetDays: z.number().int(),
  /** Observing days that readings cover, of those that have passed. */
  readDays: z.number().int(),
  days: z.number().int(),
})

/** The gauge's own record, as its observer sent it. */
export const myRecordSchema = z.object({
  unit,
  gaugeName: z.string(),
  firstDay: day.nullable(),
  /** This month day by day up to the newest reading; null: nothing read. A total stands on its last day. */
  monthDays: z.array(
    z.object({ day, amountUm: amountUm.nullable(), isTrace: z.boolean(), spanDays: z.number().int() }),
  ),
  month: sumSchema,
  /** The same days of the month in earlier years; null where fewer than three years have most of them. */
  monthUsualUm: amountUm.nullable(),
  /** This year by month. */
  months: z.array(sumSchema.extend({ month: z.string() })),
  year: sumSchema,
  /** The newest daily reading among all daily readings of the gauge, and among those of its calendar month; wet ones alone. */
  rank: z
    .object({
      day,
      amountUm,
      place: z.number().int(),
      of: z.number().int(),
      placeInMonth: z.number().int(),
      ofMonth: z.number().int(),
    })
    .nullable(),
  /** Oldest first, this year last; `toDateUm`: up to the same day of the year. */
  years: z.array(sumSchema.extend({ year: z.number().int(), toDateUm: amountUm })),
})

export type MyGauge = z.infer<typeof myGaugeSchema>
export type MyGauges = z.infer<typeof myGaugesSchema>
export type MyReading = z.infer<typeof myReadingSchema>
export type OwnClimate = z.infer<typeof ownClimateSchema>
export type WireAbsence = z.infer<typeof absenceSchema>
export type NewReading = z.infer<typeof newReadingSchema>
export type SendReadingsAsk = z.infer<typeof sendReadingsAskSchema>
export type SentReadings = z.infer<typeof sentReadingsSchema>
export type CheckEntryAsk = z.infer<typeof checkEntryAskSchema>
export type CheckedEntry = z.infer<typeof checkedEntrySchema>
export type WireEntryQuestion = z.infer<typeof entryQuestionSchema>
export type ListAbsencesAsk = z.infer<typeof listAbsencesAskSchema>
export type NetworkAbsences = z.infer<typeof networkAbsencesSchema>
export type AnnounceAbsenceAsk = z.infer<typeof announceAbsenceAskSchema>
export type WithdrawAbsenceAsk = z.infer<typeof withdrawAbsenceAskSchema>
export type AnnouncedAbsence = z.infer<typeof announcedAbsenceSchema>
export type MyRecord = z.infer<typeof myRecordSchema>
export type Confirmed = z.infer<typeof confirmedSchema>
