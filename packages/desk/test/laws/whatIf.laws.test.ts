/**
 * What a what-if tells is what deciding brings: asked on one desk, decided on another that shares nothing with it, for any
 * reading, any verdict and whatever was decided before; and taking it back restores the morning.
 */
import { changesBy, type DayReview, type DecideAsk, leastOddsChange, whatIfAskSchema } from '@gaugewright/contract'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { decide } from '../../src/app/decide.ts'
import { fieldForDay } from '../../src/app/fieldForDay.ts'
import { reviewDay } from '../../src/app/reviewDay.ts'
import { undoDecision } from '../../src/app/undoDecision.ts'
import { whatIf } from '../../src/app/whatIf.ts'
import type { Answer } from '../../src/ports/answer.ts'
import { openTestDesk } from '../support/openDesk.ts'

type Desk = Awaited<ReturnType<typeof openTestDesk>>
type Act = { gauge: number; verdict: DecideAsk['verdict']; amountUm: number; isDayBefore: boolean }

/** With the rule that lets stand, and without. */
const rules = [null, 0.98]
const desks: { asked: Desk; decided: Desk }[] = []
beforeAll(async () => {
  for (const rule of rules) {
    desks.push({ asked: await openTestDesk({}, 90, rule), decided: await openTestDesk({}, 90, rule) })
  }
}, 120_000)
afterAll(async () => {
  for (const { asked, decided } of desks) await Promise.all([asked.app.close(), decided.app.close()])
})

function taken<T>(answer: Answer<T>): T {
  if (answer.ok) return answer.value
  throw new Error(`${answer.problem.code}: ${answer.problem.seen}`)
}
const reviewOf = async ({ ports }: Desk) => taken(await reviewDay(ports, { day: 'latest' }))

/** Slips and those round them twice as often as all others. */
const near = [14, 22, 8, 13, 15, 20, 21, 23, 28]
const act: fc.Arbitrary<Act> = fc.record({
  gauge: fc.oneof(fc.integer({ min: 0, max: 34 }), fc.constantFrom(...near)),
  verdict: fc.constantFrom('stands', 'amended', 'asked', 'set aside'),
  amountUm: fc.integer({ min: 0, max: 900 }).map((tenths) => tenths * 100),
  isDayBefore: fc.boolean(),
})

function askOf(review: DayReview, { gauge, verdict, amountUm, isDayBefore }: Act): DecideAsk {
  const row = review.roll[gauge]
  if (row === undefined || row.readingId === null || review.previousDay === null) throw new Error('not read')
  const firstDay = isDayBefore ? review.previousDay : review.day
  const amended = verdict === 'amended' ? { amountUm, isTrace: false, firstDay, lastDay: review.day } : null
  return { readingId: row.readingId, verdict, amended, reason: '', by: 'me' }
}

/**
 * All but the decisions, for what the rule takes back and decides again has new ids; and but the change of the map, which
 * is kept for proposals that hardly differ.
 */
function foundIn({ roll, docket, facts }: DayReview) {
  return {
    roll: roll.map(({ decision, ...row }) => row),
    docket: docket.map(({ decision, mapChangeMm, weight, ...row }) => row),
    toDecide: facts.toDecide,
  }
}

/** Decides on a desk and returns the review and the ids to take back. */
async function decideAll({ ports }: Desk, asks: readonly DecideAsk[], made: string[]): Promise<void> {
  for (const ask of asks) {
    const review = taken(await decide(ports, ask))
    const id = review.roll.find((row) => row.readingId === ask.readingId)?.decision?.id
    if (id !== undefined && !made.includes(id)) made.push(id)
  }
}

async function undoAll({ ports }: Desk, made: readonly string[]): Promise<void> {
  for (const decisionId of [...made].reverse()) taken(await undoDecision(ports, { decisionId, by: 'me' }))
}

describe.each(rules.map((rule, index) => [rule, index] as const))('with the rule %s', (_, index) => {
  it('what-if’s after is the review after really deciding, its before the review before; undo restores it', async () => {
    const { asked, decided } = desks[index] as (typeof desks)[number]
    const untouched = await reviewOf(decided)
    const property = fc.asyncProperty(fc.array(act, { maxLength: 2 }), act, async (earlier, last) => {
      const madeAsked: string[] = []
      const madeDecided: string[] = []
      const earlierAsks = earlier.map((one) => askOf(untouched, one))
      await decideAll(asked, earlierAsks, madeAsked)
      await decideAll(decided, earlierAsks, madeDecided)
      const before = await reviewOf(decided)
      expect(foundIn(await reviewOf(asked))).toEqual(foundIn(before))
      const ask = askOf(untouched, last)
      const row = before.roll.find(({ readingId }) => readingId === ask.readingId)
      const changes = changesBy(ask, { amountUm: row?.amountUm ?? 0, isTrace: row?.isTrace ?? false })
      const told = taken(await whatIf(asked.ports, whatIfAskSchema.parse({ day: before.day, changes })))
      await decideAll(decided, [ask], madeDecided)
      const after = await reviewOf(decided)
      if (ask.verdict !== 'asked') {
        expect(told.toDecideAfter).toBe(after.facts.toDecide)
        expect(told.after.areas).toEqual(after.areas)
        expect(told.after).toEqual(taken(await fieldForDay(decided.ports, { day: after.day })))
        compareFindings(told, before, after, ask.readingId)
      }
      expect(told.toDecideBefore).toBe(before.facts.toDecide)
      expect(told.before.areas).toEqual(before.areas)
      // Both desks go through the same, for the rule keeps out where a person ever decided.
      await decideAll(asked, [ask], madeAsked)
      await undoAll(decided, madeDecided)
      await undoAll(asked, madeAsked)
      const restored = await reviewOf(decided)
      expect(foundIn(restored)).toEqual(foundIn(untouched))
      expect(restored.areas).toEqual(untouched.areas)
    })
    await fc.assert(property, { numRuns: 20, seed: 20_604 })
  }, 180_000)
})

function compareFindings(
  told: Awaited<ReturnType<typeof whatIf>> extends Answer<infer T> ? T : never,
  before: DayReview,
  after: DayReview,
  decidedId: string,
): void {
  const toldOf = new Map(told.findings.map((finding) => [finding.readingId, finding]))
  const oddsAfter = new Map(after.roll.map((row) => [row.readingId, row.standsOdds]))
  const docketAfter = new Map(after.docket.map((row) => [row.readingId, row]))
  const smallest = told.findings.at(-1)
  const leastTold =
    told.findingCount > told.findings.length && smallest !== undefined
      ? Math.max(leastOddsChange, Math.abs(smallest.after.standsOdds - smallest.before.standsOdds))
      : leastOddsChange
  for (const row of before.roll) {
    const { readingId, standsOdds } = row
    if (readingId === null || readingId === decidedId || standsOdds === null) continue
    const then = oddsAfter.get(readingId) ?? null
    if (then === null) continue
    const finding = toldOf.get(readingId)
    if (finding === undefined) {
      expect(Math.abs(then - standsOdds)).toBeLessThanOrEqual(leastTold)
      continue
    }
    expect([finding.before.standsOdds, finding.after.standsOdds]).toEqual([standsOdds, then])
    const docketRow = docketAfter.get(readingId)
    expect(finding.after.toDecide).toBe(docketRow !== undefined && docketRow.decision === null)
    if (docketRow === undefined) continue
    expect([finding.after.likeliest, finding.after.likeliestOdds]).toEqual([
      docketRow.likeliest,
      docketRow.likeliestOdds,
    ])
  }
}
