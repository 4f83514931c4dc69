/** The rule that decides alone: its settings, and what it would do. Shapes on the wire (JSON); odds 0 to 1. */
import { z } from 'zod'

const day = z.iso.date()

export const ruleSettingSchema = z.object({
  id: z.string(),
  /** "Let stand when at least this sure"; null: no rule, everything is left to a person. */
  letStandAt: z.number().nullable(),
  by: z.string(),
  why: z.string(),
  setAtUtc: z.string(),
})

export const ruleSchema = z.object({
  network: z.object({
    id: z.string(),
    name: z.string(),
    unit: z.enum(['mm', 'in']),
    timeZone: z.string(),
    readingTime: z.string(),
    language: z.enum(['en', 'es']),
  }),
  /** Of the setting in force; null where there is no rule. */
  letStandAt: z.number().nullable(),
  /** With no rule: readings whose odds of standing are below this come to the docket. */
  docketBelow: z.number(),
  /** Every setting there was, newest first; the first is in force. */
  history: z.array(ruleSettingSchema),
})

export const setRuleAskSchema = z.object({
  letStandAt: z.number().nullable(),
  why: z.string().max(2000),
  by: z.string().max(200).default('coordinator'),
})

/** As a query: numbers may come as text. */
export const previewRuleAskSchema = z.object({
  /** The last so many observing days; a year, or fewer in a large network, where left out. */
  days: z.coerce.number().int().min(1).max(3660).optional(),
  /** A threshold that must be among the points, beside those offered. */
  letStandAt: z.coerce.number().optional(),
  /** Look for the threshold that is expected to let through no more wrong readings than this in 365 mornings. */
  wrongAYear: z.coerce.number().min(0).optional(),
})

/** A number to be expected, and P10 and P90 of the number that comes. */
export const countForecastSchema = z.object({ expected: z.number(), low: z.number().int(), high: z.number().int() })

export const rulePointSchema = z.object({
  letStandAt: z.number(),
  /** Readings of all mornings looked at. */
  letStand: z.number().int(),
  leftToPerson: z.number().int(),
  /** Wrong readings among those let stand, by the odds. */
  expectedWrong: z.number(),
  /** Left to a person: mean of the mornings, and what one morning in ten exceeds. */
  leftAMorning: z.number(),
  busyMorningLeft: z.number(),
  /** Wrong readings let through in 30 and in 365 mornings to come. */
  month: countForecastSchema,
  year: countForecastSchema,
})

export const rulePreviewSchema = z.object({
  firstDay: day,
  lastDay: day,
  /** Observing days looked at, each judged as its own morning saw it. */
  mornings: z.number().int(),
  /** Days from the first reading of the network to the last: what there is to learn from. */
  recordDays: z.number().int(),
  /** Readings about which something can be told, and those without a usable neighbour, which no rule decides. */
  readings: z.number().int(),
  cannotTell: z.number().int(),
  /** Rising thresholds: those offered, the one in force, the one asked for, and the measure of doubt of the network. */
  points: z.array(rulePointSchema),
  /** At the threshold asked for, else the one in force: exact P10 and P90 of the wrong readings let through in these mornings. */
  at: z.object({ letStandAt: z.number(), expectedWrong: z.number(), low: z.number(), high: z.number() }).nullable(),
  /** Null where it was not asked for; its threshold is null where no rule can promise so few. */
  wished: z.object({ wrongAYear: z.number(), letStandAt: z.number().nullable() }).nullable(),
})

/**
 * A preview that takes a while comes as lines (application/x-ndjson): how far it is, again and again, and at last either
 * the preview or a problem. One that is ready comes as plain JSON.
 */
export const rulePreviewLineSchema = z.union([
  z.object({ progress: z.object({ done: z.number().int(), total: z.number().int() }) }),
  z.object({ preview: rulePreviewSchema }),
  z.object({ problem: z.object({ code: z.string(), seen: z.string(), advice: z.string() }) }),
])

export type RuleSetting = z.infer<typeof ruleSettingSchema>
export type Rule = z.infer<typeof ruleSchema>
export type SetRuleAsk = z.infer<typeof setRuleAskSchema>
export type PreviewRuleAsk = z.infer<typeof previewRuleAskSchema>
export type RulePoint = z.infer<typeof rulePointSchema>
export type RulePreview = z.infer<typeof rulePreviewSchema>
export type RulePreviewLine = z.infer<typeof rulePreviewLineSchema>
