/** Urgent reports on the desk: states, what each would change for a warning, storms, settings. Shapes on the wire (JSON). */
import { z } from 'zod'
import { fileUrgentAskSchema } from './urgent.ts'

export const urgentStates = ['new', 'seen', 'passed on', 'closed'] as const
/** Against the office's thresholds: `significant` and `severe` would change a warning, `near` is within a quarter of it. */
export const urgentLevels = ['significant', 'severe', 'near', 'below'] as const
export const passOnForms = ['storm report', 'SHEF'] as const
export const passOnWays = ['copied', 'file', 'mail', 'webhook'] as const

const range = z.object({ low: z.number(), high: z.number() })
const who = z.string().trim().min(1).max(200).default('coordinator')

export const seenBySchema = z.object({ eventId: z.string(), by: z.string(), atUtc: z.string() })

export const passedOnSchema = z.object({
  eventId: z.string(),
  by: z.string(),
  atUtc: z.string(),
  form: z.enum(passOnForms),
  way: z.enum(passOnWays),
  /** Where to, as the office named it; null for what was copied. */
  to: z.string().nullable(),
  /** The text as it went. */
  text: z.string(),
})

export const urgentSeveritySchema = z.object({
  level: z.enum(urgentLevels),
  /** Of the severe threshold of its kind: 1 is at it. Null where nothing was measured. */
  ratio: z.number().nullable(),
  /** What was held against what, for the screen to word. */
  basis: z.enum(['stone size', 'rain guidance', 'gust', 'snow rate', 'water', 'damage']),
  /** Minutes of the guidance that the rain was held against. */
  guidanceMinutes: z.number().nullable(),
})

export const plausibilitySchema = z.object({
  /** Odds that it was so, 0 to 1: prior of its kind and season, sharpened by reports near in space and time. */
  odds: z.number(),
  priorOdds: z.number(),
  /** Other reports that bear on it, and those of them that speak for it. */
  near: z.number().int(),
  inFavour: z.number().int(),
  nearestKm: z.number().nullable(),
})

export const urgentItemSchema = z.object({
  report: fileUrgentAskSchema,
  receivedAtUtc: z.string(),
  gauge: z.object({ id: z.string(), code: z.string(), name: z.string(), area: z.string().nullable() }).nullable(),
  latDeg: z.number(),
  lonDeg: z.number(),
  state: z.enum(urgentStates),
  seenBy: z.array(seenBySchema),
  passedOn: z.array(passedOnSchema),
  closed: z.object({ eventId: z.string(), by: z.string(), atUtc: z.string(), why: z.string() }).nullable(),
  severity: urgentSeveritySchema,
  /** Of the largest stone as it lands, J: what published fall speeds span. Null for other kinds. */
  energyJ: range.nullable(),
  /** Rain rate or snow rate, mm/h. */
  rateMmPerH: z.number().nullable(),
  plausibility: plausibilitySchema,
  stormId: z.string().nullable(),
  /** What it would change for a warning: the list is sorted by it, largest first. */
  weight: z.number(),
  /** From what was seen to the desk, to the first look, to the first passing on; null where not yet, or clocks disagree. */
  secondsToDesk: z.number().nullable(),
  secondsToSeen: z.number().nullable(),
  secondsToPassedOn: z.number().nullable(),
})

export const stormSchema = z.object({
  id: z.string(),
  reportIds: z.array(z.string()),
  firstSeenAtUtc: z.string(),
  lastSeenAtUtc: z.string(),
  /** Largest stone among its reports, mm; null without hail. */
  largestStoneMm: z.number().nullable(),
  /** Where it was at the first and the last report by the track; one and the same place where it cannot be told to move. */
  from: z.object({ latDeg: z.number(), lonDeg: z.number() }),
  to: z.object({ latDeg: z.number(), lonDeg: z.number() }),
  /** Null where too few reports tell of a movement. */
  track: z
    .object({
      speedKmPerH: z.number(),
      /** P10 and P90. */
      speedRangeKmPerH: range,
      /** Toward which it moves, degrees clockwise from north. */
      towardDeg: z.number(),
      /** Half width of the 80 % interval; 180 says that the direction is unknown. */
      towardPlusMinusDeg: z.number(),
    })
    .nullable(),
})

export const guidanceAmountSchema = z.object({
  minutes: z.number().int().min(5).max(1440),
  amountUm: z.number().int().min(100).max(1_000_000),
})

/** Where reports may be passed on to: set by the coordinator, so that nothing goes anywhere else. */
export const destinationSchema = z.object({
  name: z.string().trim().min(1).max(60),
  way: z.enum(['file', 'mail', 'webhook']),
  /** A folder of this computer, a mail address, or an http(s) address. */
  to: z.string().trim().min(1).max(500),
})

/** Sent without a person only where the office says so: from this level on, at least this plausible. */
export const passOnRuleSchema = z.object({
  atLeast: z.enum(['severe', 'significant']),
  oddsAtLeast: z.number().min(0.5).max(0.999),
  form: z.enum(passOnForms),
  /** Name of a destination. */
  destination: z.string().trim().min(1).max(60),
})

export const urgentSettingsSchema = z.object({
  severeHailMm: z.number().min(5).max(200),
  significantHailMm: z.number().min(5).max(200),
  severeGustMps: z.number().min(5).max(100),
  severeSnowMmPerH: z.number().min(5).max(500),
  /** Rain that brings trouble, by duration; short durations first. */
  guidance: z.array(guidanceAmountSchema).min(1).max(12),
  /** Shown wherever people act. */
  emergencyNumber: z.string().trim().min(2).max(40).nullable(),
  /** Header of the storm report, as the office wants it. */
  officeName: z.string().trim().max(60),
  /** Two letters after the county in a storm report; empty where there is none. */
  stateCode: z.string().trim().max(2),
  destinations: z.array(destinationSchema).max(20),
  passOnRule: passOnRuleSchema.nullable(),
})

export const urgentNowSchema = z.object({
  network: z.object({
    id: z.string(),
    name: z.string(),
    unit: z.enum(['mm', 'in']),
    timeZone: z.string(),
    language: z.enum(['en', 'es']),
  }),
  nowUtc: z.string(),
  /** Largest weight first; closed ones last. */
  items: z.array(urgentItemSchema),
  storms: z.array(stormSchema),
  settings: urgentSettingsSchema,
  newCount: z.number().int(),
  /** Reports of the time asked for that are not among the items, because there are so many: the least weighty. */
  hiddenCount: z.number().int(),
  /** Of the reports shown: medians, null where there are none. */
  medianSeconds: z.object({
    toDesk: z.number().nullable(),
    toSeen: z.number().nullable(),
    toPassedOn: z.number().nullable(),
  }),
  /** Number of the last event in this answer: listen on from it. */
  lastEvent: z.number().int(),
})

/** As a query: how far back, hours. Reports that nobody has looked at are told however old they are. */
export const urgentNowAskSchema = z.object({ hours: z.coerce.number().min(1).max(8784).default(24) })

export const markSeenAskSchema = z.object({ reportId: z.string(), by: who })
export const closeUrgentAskSchema = z.object({ reportId: z.string(), by: who, why: z.string().trim().min(1).max(500) })
/** Takes back one event: a look, a passing on that was only copied, a closing. Both stay in the ledger. */
export const undoUrgentAskSchema = z.object({ eventId: z.string(), by: who })
export const passOnAskSchema = z.object({
  reportId: z.string(),
  by: who,
  form: z.enum(passOnForms),
  /** Name of a destination; null where a person copied the text. */
  destination: z.string().trim().min(1).max(60).nullable().default(null),
})
/** The coded text of a report, to look at and to copy; nothing is recorded. `cut`: fields that did not fit their columns. */
export const codedUrgentAskSchema = z.object({ form: z.enum(passOnForms).default('storm report') })
export const codedUrgentSchema = z.object({
  reportId: z.string(),
  form: z.enum(passOnForms),
  text: z.string(),
  cut: z.array(z.string()),
})
export const setUrgentSettingsAskSchema = z.object({ settings: urgentSettingsSchema, by: who })

/**
 * What comes over /api/urgent/live (text/event-stream, event `urgent`, its id the number of the event): something
 * happened to a report. Ask /api/urgent anew, or `report` for the first look where it is new.
 */
export const urgentLiveSchema = z.object({
  number: z.number().int(),
  what: z.enum(['filed', 'seen', 'passed on', 'closed', 'undone']),
  reportId: z.string(),
  atUtc: z.string(),
  /** With `filed`: the report as it is on the desk. */
  item: urgentItemSchema.nullable(),
})

export type UrgentState = (typeof urgentStates)[number]
export type UrgentLevel = (typeof urgentLevels)[number]
export type PassOnForm = (typeof passOnForms)[number]
export type PassOnWay = (typeof passOnWays)[number]
export type PassedOn = z.infer<typeof passedOnSchema>
export type UrgentItem = z.infer<typeof urgentItemSchema>
export type WireStorm = z.infer<typeof stormSchema>
export type UrgentSettings = z.infer<typeof urgentSettingsSchema>
export type Destination = z.infer<typeof destinationSchema>
export type PassOnRule = z.infer<typeof passOnRuleSchema>
export type UrgentNow = z.infer<typeof urgentNowSchema>
export type UrgentNowAsk = z.infer<typeof urgentNowAskSchema>
export type MarkSeenAsk = z.infer<typeof markSeenAskSchema>
export type CloseUrgentAsk = z.infer<typeof closeUrgentAskSchema>
export type UndoUrgentAsk = z.infer<typeof undoUrgentAskSchema>
export type PassOnAsk = z.infer<typeof passOnAskSchema>
export type CodedUrgent = z.infer<typeof codedUrgentSchema>
export type SetUrgentSettingsAsk = z.infer<typeof setUrgentSettingsAskSchema>
export type UrgentLive = z.infer<typeof urgentLiveSchema>
