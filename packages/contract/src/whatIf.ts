/** What a decision would do, asked before it is made: to the map, to the area means and to what is found of other readings. */
import { mistakes } from '@gaugewright/science'
import { z } from 'zod'
import { type DecideAsk, fieldSchema } from './today.ts'

/** Odds of standing that move by less than this between two looks are one and the same to a person. */
export const leastOddsChange = 0.05
/** Changed findings that are told, the largest first; the rest is only counted. */
export const mostChangedFindings = 6

const day = z.iso.date()

/**
 * Decisions as amounts: null sets the reading aside, the amount and days that were reported let it stand, any other
 * amends it. No change at all is a day as it is.
 */
export const whatIfAskSchema = z.object({
  day,
  changes: z
    .array(
      z.object({
        readingId: z.string(),
        amountUm: z.number().int().nullable(),
        isTrace: z.boolean().default(false),
        firstDay: day.optional(),
        lastDay: day.optional(),
      }),
    )
    .max(50),
})

export const findingOddsSchema = z.object({
  /** False where no neighbour takes part: the odds are then only the usual ones. */
  canTell: z.boolean(),
  standsOdds: z.number(),
  likeliest: z.enum(mistakes),
  likeliestOdds: z.number(),
  /** On the docket, waiting for a decision. */
  toDecide: z.boolean(),
})

/** Another reading of the day of which something else is found. */
export const changedFindingSchema = z.object({
  readingId: z.string(),
  gaugeId: z.string(),
  code: z.string(),
  name: z.string(),
  amountUm: z.number().int(),
  isTrace: z.boolean(),
  before: findingOddsSchema,
  after: findingOddsSchema,
})

export const whatIfSchema = z.object({
  before: fieldSchema,
  after: fieldSchema,
  meanAbsoluteChangeMm: z.number(),
  /** Those that change most, largest change first, and how many change in all. */
  findings: z.array(changedFindingSchema).max(mostChangedFindings),
  findingCount: z.number().int(),
  /** Readings left to decide. */
  toDecideBefore: z.number().int(),
  toDecideAfter: z.number().int(),
})

/** The change that a decision is; none where the observer is only asked. */
export function changesBy(
  { readingId, verdict, amended }: Pick<DecideAsk, 'readingId' | 'verdict' | 'amended'>,
  reported: { amountUm: number; isTrace: boolean },
): WhatIfAsk['changes'] {
  switch (verdict) {
    case 'stands':
      return [{ readingId, amountUm: reported.amountUm, isTrace: reported.isTrace }]
    case 'amended':
      return amended === null ? [] : [{ readingId, ...amended }]
    case 'set aside':
      return [{ readingId, amountUm: null, isTrace: false }]
    case 'asked':
      return []
  }
}

export type WhatIfAsk = z.infer<typeof whatIfAskSchema>
export type FindingOdds = z.infer<typeof findingOddsSchema>
export type ChangedFinding = z.infer<typeof changedFindingSchema>
export type WhatIf = z.infer<typeof whatIfSchema>
