/**
 * Urgent reports: hail, torrential rain, flooding, wind and snow, told at once. What an observer files; how the desk shows
 * it is in urgentDesk.ts. Shapes on the wire (JSON): diameters and depths in mm, amounts in whole micrometres, instants
 * RFC 3339 with a zone. The sender makes the id, so that what is sent twice is filed once.
 */
import { hailObjectNames } from '@gaugewright/science'
import { z } from 'zod'
import {
  damages,
  floodedThings,
  groundCovers,
  largestStoneMm,
  stoneMeasures,
  stoneShapes,
  type urgentKinds,
  waterDepths,
} from './urgentLists.ts'

export { hailObjectNames } from '@gaugewright/science'

const instant = z.iso.datetime({ offset: true })

export const stoneSchema = z
  .object({
    /** Longest axis. By object: the size that the object stands for. */
    diameterMm: z.number().min(1).max(largestStoneMm),
    by: z.enum(stoneMeasures),
    object: z.enum(hailObjectNames).nullable().default(null),
  })
  .refine(({ by, object }) => by !== 'object' || object !== null, 'a stone by object names the object')

const began = instant.nullable().default(null)
const ended = instant.nullable().default(null)
const stillGoing = z.boolean().nullable().default(null)
const damage = z.array(z.enum(damages)).max(damages.length).default([])

export const hailSchema = z.object({
  kind: z.literal('hail'),
  largest: stoneSchema,
  typical: stoneSchema.nullable().default(null),
  smallest: stoneSchema.nullable().default(null),
  beganAtUtc: began,
  endedAtUtc: ended,
  /** Still falling when it was sent; null where nobody said. */
  isGoingOn: stillGoing,
  shape: z.enum(stoneShapes).nullable().default(null),
  groundCover: z.enum(groundCovers).nullable().default(null),
  damage,
})

export const urgentRainSchema = z.object({
  kind: z.literal('rain'),
  amountUm: z.number().int().min(1).max(2_000_000),
  minutes: z.number().min(1).max(1440),
  beganAtUtc: began,
  endedAtUtc: ended,
  isGoingOn: stillGoing,
  damage,
})

export const floodingSchema = z.object({
  kind: z.literal('flooding'),
  things: z.array(z.enum(floodedThings)).min(1).max(floodedThings.length),
  /** Judged from a safe place, never by walking in. */
  depth: z.enum(waterDepths).nullable().default(null),
  isRising: z.boolean().nullable().default(null),
  isFast: z.boolean().nullable().default(null),
  beganAtUtc: began,
  endedAtUtc: ended,
  isGoingOn: stillGoing,
  damage,
})

export const windSchema = z.object({
  kind: z.literal('wind'),
  /** Strongest gust; null where only damage was seen. */
  gustMps: z.number().min(1).max(150).nullable().default(null),
  by: z.enum(['measured', 'estimated']).nullable().default(null),
  beganAtUtc: began,
  endedAtUtc: ended,
  isGoingOn: stillGoing,
  damage,
})

export const urgentSnowSchema = z.object({
  kind: z.literal('snow'),
  /** New snow in the time told. */
  depthMm: z.number().min(1).max(5000),
  minutes: z.number().min(1).max(1440),
  beganAtUtc: began,
  endedAtUtc: ended,
  isGoingOn: stillGoing,
  damage,
})

export const urgentSeenSchema = z.discriminatedUnion('kind', [
  hailSchema,
  urgentRainSchema,
  floodingSchema,
  windSchema,
  urgentSnowSchema,
])

/** At a gauge of the network, by its id; or at a place on the map, with what people call it. */
export const urgentWhereSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('gauge'), gaugeId: z.string().min(1).max(200) }),
  z.object({
    kind: z.literal('place'),
    latDeg: z.number().min(-90).max(90),
    lonDeg: z.number().min(-180).max(180),
    name: z.string().trim().max(200).nullable().default(null),
  }),
])

/** What an observer sends. Photos are sent before, on their own, and are named here by their ids (SHA-256). */
export const fileUrgentAskSchema = z.object({
  /** Made by the sender (UUID): sent again with the same content it is there already. */
  id: z.uuid(),
  /**
   * For more about a report filed before, its first id: the newest filing counts, and all are kept. On the desk it stays one
   * report under its first id. Null for a first filing. Each filing has an id of its own.
   */
  updates: z.uuid().nullable().default(null),
  where: urgentWhereSchema,
  /** When it was seen: for hail when the largest stone fell, for rain the end of the minutes told. */
  seenAtUtc: instant,
  /** When the sender's device sent it, by its own clock; null where not known. */
  sentAtUtc: instant.nullable().default(null),
  by: z.string().trim().min(1).max(200),
  remark: z.string().trim().max(2000).nullable().default(null),
  photoIds: z.array(z.string().min(1).max(100)).max(6).default([]),
  seen: urgentSeenSchema,
})

/**
 * What the observer's form must know before anything is sent: whose it is, in which unit, whom to call. As a query the
 * gauge's code, where nobody is signed in.
 */
export const urgentFormAskSchema = z.object({ gauge: z.string().trim().max(40).optional() })
export const urgentFormSchema = z.object({
  network: z.object({
    id: z.string(),
    name: z.string(),
    unit: z.enum(['mm', 'in']),
    timeZone: z.string(),
    language: z.enum(['en', 'es']),
  }),
  /** Null where the network has set none. */
  emergencyNumber: z.string().nullable(),
  /** Null where the code is none of the network's: the form then asks for a place. */
  gauge: z.object({ id: z.string(), code: z.string(), name: z.string() }).nullable(),
  observerName: z.string().nullable(),
})

/** Says only that it arrived: an observer is never shown what the neighbours reported. */
export const fileUrgentSchema = z.object({
  id: z.string(),
  receivedAtUtc: z.string(),
  /** True where the same report had arrived before. */
  already: z.boolean(),
})

export type UrgentFormAsk = z.infer<typeof urgentFormAskSchema>
export type UrgentForm = z.infer<typeof urgentFormSchema>
export type UrgentKind = (typeof urgentKinds)[number]
export type Stone = z.infer<typeof stoneSchema>
export type HailSeen = z.infer<typeof hailSchema>
export type UrgentSeen = z.infer<typeof urgentSeenSchema>
export type UrgentWhere = z.infer<typeof urgentWhereSchema>
/** As sent, defaults not yet filled in. */
export type FileUrgentInput = z.input<typeof fileUrgentAskSchema>
export type FileUrgentAsk = z.infer<typeof fileUrgentAskSchema>
export type FileUrgent = z.infer<typeof fileUrgentSchema>
