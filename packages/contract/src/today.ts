/** Today: one observing day on the desk. Shapes on the wire (JSON); days ISO, amounts in whole micrometres. */
import { mistakes } from '@gaugewright/science'
import { z } from 'zod'

export const verdictSchema = z.enum(['stands', 'amended', 'asked', 'set aside'])
export const explanationKindSchema = z.enum(['stands', ...mistakes])
/**
 * What the desk offers first for a reading: to let it stand, to amend it to the proposal, or to ask the observer, where
 * the proposal is too unsure to be taken unasked. All acts stay open.
 */
export const suggestedActSchema = z.enum(['stands', 'amend', 'ask'])
export const rollAnswerSchema = z.enum(['read', 'read late', 'multi-day open', 'away', 'silent'])
const day = z.iso.date()

export const amountSchema = z.object({ amountUm: z.number().int(), isTrace: z.boolean() })

export const quantilesSchema = z.object({
  dryChance: z.number(),
  meanMm: z.number(),
  levels: z.array(z.number()),
  mm: z.array(z.number()),
})

export const decisionSchema = z.object({
  id: z.string(),
  readingId: z.string(),
  verdict: verdictSchema,
  amended: z.object({ amountUm: z.number().int(), isTrace: z.boolean(), firstDay: day, lastDay: day }).nullable(),
  by: z.union([
    z.object({ kind: z.literal('person'), name: z.string() }),
    z.object({ kind: z.literal('rule'), rule: z.string() }),
  ]),
  reason: z.string(),
  decidedAtUtc: z.string(),
  undoes: z.string().nullable(),
})

export const rollRowSchema = z.object({
  gaugeId: z.string(),
  code: z.string(),
  name: z.string(),
  area: z.string().nullable(),
  observerName: z.string().nullable(),
  latDeg: z.number(),
  lonDeg: z.number(),
  elevationM: z.number().nullable(),
  answer: rollAnswerSchema,
  /** Where the answer is `away`: the last day of the absence. */
  awayUntil: day.optional(),
  readingId: z.string().nullable(),
  amountUm: z.number().int().nullable(),
  isTrace: z.boolean(),
  text: z.string().nullable(),
  spanDays: z.number().int(),
  endsAtUtc: z.string().nullable(),
  standsOdds: z.number().nullable(),
  decision: decisionSchema.nullable(),
  /** Accepted amount after decisions; null when silent or set aside. */
  acceptedUm: z.number().int().nullable(),
})

export const docketRowSchema = z.object({
  readingId: z.string(),
  gaugeId: z.string(),
  code: z.string(),
  name: z.string(),
  day,
  amountUm: z.number().int(),
  isTrace: z.boolean(),
  text: z.string(),
  standsOdds: z.number(),
  likeliest: explanationKindSchema,
  likeliestOdds: z.number(),
  expectedP10Mm: z.number(),
  expectedP50Mm: z.number(),
  expectedP90Mm: z.number(),
  suggested: suggestedActSchema,
  proposedUm: z.number().int().nullable(),
  proposedFirstDay: day,
  proposedLastDay: day,
  /** Mean absolute change of the map if the proposal were taken, mm over the basin, and doubt × that change. */
  mapChangeMm: z.number(),
  weight: z.number(),
  sentence: z.string(),
  decision: decisionSchema.nullable(),
})

export const dayFactsSchema = z.object({
  expected: z.number().int(),
  read: z.number().int(),
  late: z.number().int(),
  multiDayOpen: z.number().int(),
  away: z.number().int(),
  silent: z.number().int(),
  toDecide: z.number().int(),
  decided: z.number().int(),
  wet: z.number().int(),
  largestUm: z.number().int().nullable(),
  largestGauge: z.string().nullable(),
})

export const areaMeanSchema = z.object({
  name: z.string(),
  meanMm: z.number(),
  p10Mm: z.number(),
  p90Mm: z.number(),
  gaugeCount: z.number().int(),
})

export const dayReviewSchema = z.object({
  network: z.object({
    id: z.string(),
    name: z.string(),
    unit: z.enum(['mm', 'in']),
    timeZone: z.string(),
    readingTime: z.string(),
    language: z.enum(['en', 'es']),
  }),
  day,
  previousDay: day.nullable(),
  nextDay: day.nullable(),
  firstDay: day,
  lastDay: day,
  facts: dayFactsSchema,
  roll: z.array(rollRowSchema),
  docket: z.array(docketRowSchema),
  areas: z.array(areaMeanSchema),
  modelVersion: z.string(),
})

export const evidenceSchema = z.object({
  readingId: z.string(),
  gaugeId: z.string(),
  code: z.string(),
  name: z.string(),
  day,
  observerName: z.string().nullable(),
  reading: z.object({
    text: z.string(),
    unit: z.enum(['mm', 'in']),
    amountUm: z.number().int(),
    isTrace: z.boolean(),
    firstDay: day,
    lastDay: day,
    endsAtUtc: z.string(),
    door: z.string(),
    remark: z.string().nullable(),
  }),
  earlier: z.array(z.object({ text: z.string(), amountUm: z.number().int(), receivedAtUtc: z.string() })),
  canTell: z.boolean(),
  standsOdds: z.number(),
  suggested: suggestedActSchema,
  expectation: quantilesSchema,
  explanations: z.array(
    z.object({
      kind: explanationKindSchema,
      odds: z.number(),
      impliedMm: z.number(),
      impliedP10Mm: z.number(),
      impliedP90Mm: z.number(),
      firstDay: day,
      lastDay: day,
      sentence: z.string(),
    }),
  ),
  /** One or two sentences for the coordinator, and the message to the observer, both in the network's language. */
  sentence: z.string(),
  message: z.string(),
  neighbours: z.array(
    z.object({
      gaugeId: z.string(),
      code: z.string(),
      name: z.string(),
      distanceM: z.number(),
      bearingDeg: z.number(),
      elevationM: z.number().nullable(),
      amountMm: z.number().nullable(),
      isTrace: z.boolean(),
      weight: z.number(),
      believed: z.number(),
    }),
  ),
  daysAround: z.array(
    z.object({
      day,
      reportedMm: z.number().nullable(),
      expectedP10Mm: z.number(),
      expectedP50Mm: z.number(),
      expectedP90Mm: z.number(),
    }),
  ),
  /** What is to be known of this gauge's readings on the days around: totals, gaps, overlaps; in the network's language. */
  notes: z.array(z.string()),
  /** What the odds already allow for at this gauge: its dates, or its way with totals; in the network's language. */
  allowedFor: z.string().nullable(),
  proposal: z.object({ amountUm: z.number().int(), isTrace: z.boolean(), firstDay: day, lastDay: day }).nullable(),
  decisions: z.array(decisionSchema),
})

/** The field on a regular lon/lat grid, row 0 in the north; null outside the outline. Values rounded to 0.01 mm. */
export const fieldSchema = z.object({
  day,
  west: z.number(),
  south: z.number(),
  east: z.number(),
  north: z.number(),
  columns: z.number().int(),
  rows: z.number().int(),
  meanMm: z.array(z.number().nullable()),
  p10Mm: z.array(z.number().nullable()),
  p50Mm: z.array(z.number().nullable()),
  p90Mm: z.array(z.number().nullable()),
  isohyets: z.array(z.object({ levelMm: z.number(), lines: z.array(z.array(z.tuple([z.number(), z.number()]))) })),
  areas: z.array(areaMeanSchema),
})

export const decideAskSchema = z.object({
  readingId: z.string(),
  verdict: verdictSchema,
  amended: z
    .object({ amountUm: z.number().int().min(0), isTrace: z.boolean(), firstDay: day, lastDay: day })
    .nullable()
    .default(null),
  reason: z.string().max(2000).default(''),
  by: z.string().max(200).default('coordinator'),
})
export const undoAskSchema = z.object({ decisionId: z.string(), by: z.string().max(200).default('coordinator') })

export const problemSchema = z.object({ code: z.string(), seen: z.string(), advice: z.string() })

/**
 * Base map, drawn in the order given. Each layer is a GeoJSON FeatureCollection in degrees; features carry `name`.
 * `outline`, `area`: (Multi)Polygon; `river`: (Multi)LineString, optional `order` (Strahler: 1 = headwater); `place`: Point,
 * optional `rank` (1 = largest town); `relief`: (Multi)Polygon or (Multi)LineString with `elevationM`, lowest first.
 */
export const mapLayersSchema = z.object({
  layers: z.array(
    z.object({ name: z.string(), kind: z.enum(['area', 'river', 'place', 'relief', 'outline']), geojson: z.unknown() }),
  ),
})

export type DayReview = z.infer<typeof dayReviewSchema>
export type SuggestedAct = z.infer<typeof suggestedActSchema>
export type RollRow = z.infer<typeof rollRowSchema>
export type DocketRow = z.infer<typeof docketRowSchema>
export type AreaMean = z.infer<typeof areaMeanSchema>
export type DayEvidence = z.infer<typeof evidenceSchema>
export type DayField = z.infer<typeof fieldSchema>
export type DecideAsk = z.infer<typeof decideAskSchema>
export type UndoAsk = z.infer<typeof undoAskSchema>
export type WireDecision = z.infer<typeof decisionSchema>
export type Problem = z.infer<typeof problemSchema>
export type MapLayers = z.infer<typeof mapLayersSchema>
