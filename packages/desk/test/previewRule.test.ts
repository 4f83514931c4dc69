/** What a rule would do, before it does anything: through HTTP, in lines while it is worked out, and by itself. */
import { type RulePreview, rulePreviewLineSchema, rulePreviewSchema } from '@gaugewright/contract'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { previewRule } from '../src/app/previewRule.ts'
import { reviewDay } from '../src/app/reviewDay.ts'
import { openTestDesk } from './support/openDesk.ts'

type Desk = Awaited<ReturnType<typeof openTestDesk>>
let desk: Desk

beforeAll(async () => {
  desk = await openTestDesk({}, 150, 0.97)
})
afterEach(() => {
  for (const failure of desk.failures.splice(0)) throw failure
})
afterAll(async () => {
  await desk.app.close()
})

const ask = (query: string) => desk.app.inject({ method: 'GET', url: `/api/rule/preview?${query}` })
async function preview(change: Parameters<typeof previewRule>[1]): Promise<RulePreview> {
  const answer = await previewRule(desk.ports, change)
  if (!answer.ok) throw new Error(answer.problem.seen)
  return rulePreviewSchema.parse(answer.value)
}
const pointAt = (of: RulePreview, letStandAt: number) => of.points.find((point) => point.letStandAt === letStandAt)

describe('previewRule', () => {
  it('tells how far it is while it works, and at last the preview; once known it is there at once', async () => {
    const first = await ask('days=40')
    expect(first.headers['content-type']).toContain('application/x-ndjson')
    const lines = first.body
      .trimEnd()
      .split('\n')
      .map((line) => rulePreviewLineSchema.parse(JSON.parse(line)))
    const told = lines.flatMap((line) => ('progress' in line ? [line.progress] : []))
    expect(told.map(({ done }) => done)).toEqual([...told.map(({ done }) => done)].sort((a, b) => a - b))
    expect(told[0]).toEqual({ done: 0, total: 40 })
    expect(told.at(-1)).toEqual({ done: 40, total: 40 })
    const last = lines.at(-1)
    const again = await ask('days=40')
    expect(again.headers['content-type']).toContain('application/json')
    expect(last).toEqual({ preview: rulePreviewSchema.parse(again.json()) })
  })

  it('looks at the last mornings of the ledger; every reading is let stand, left to a person, or cannot be told', async () => {
    const found = await preview({ days: 40 })
    expect([found.firstDay, found.lastDay, found.mornings]).toEqual(['2026-04-22', '2026-05-31', 40])
    const stored = await desk.ports.ledger.readings('small', '2026-04-22', '2026-05-31')
    expect(found.readings + found.cannotTell).toBe(stored.length)
    for (const { leftToPerson, letStand } of found.points) expect(letStand + leftToPerson).toBe(found.readings)
  })

  it('has the threshold in force, the one asked for and the measure of doubt among its points', async () => {
    const found = await preview({ days: 40, letStandAt: 0.9753 })
    for (const letStandAt of [0.97, 0.9753, 0.5, 0.98])
      expect(pointAt(found, letStandAt), String(letStandAt)).toBeDefined()
    expect(found.at?.letStandAt).toBe(0.9753)
    expect(found.at?.expectedWrong).toBeCloseTo(pointAt(found, 0.9753)?.expectedWrong ?? Number.NaN, 9)
    expect((await preview({ days: 40 })).at?.letStandAt).toBe(0.97)
  })

  it('finds the threshold for a wished number of wrong readings a year, or says that there is none', async () => {
    const { points } = await preview({ days: 40 })
    const expected = (at: number): number => points[at]?.year.expected ?? Number.NaN
    const last = points.findIndex((_, at) => at > points.length / 2 && expected(at) > expected(at + 1))
    const { wished } = await preview({ days: 40, wrongAYear: (expected(last) + expected(last + 1)) / 2 })
    const at = points.findIndex(({ letStandAt }) => letStandAt === wished?.letStandAt)
    // Whole steps are offered: the one found is the last that lets too many through, plus one, or one stricter.
    expect(last).toBeGreaterThan(0)
    expect([last + 1, last + 2]).toContain(at)
    expect((await preview({ days: 40, wrongAYear: 0 })).wished).toEqual({ wrongAYear: 0, letStandAt: null })
  })

  it('of the last morning it says what the rule then really does', async () => {
    const reviewed = await reviewDay(desk.ports, { day: 'latest' })
    const ruled = reviewed.ok ? reviewed.value.roll.filter(({ decision }) => decision?.by.kind === 'rule').length : -1
    const found = await preview({ days: 1 })
    // Readings of a morning settle one after another, in another order here than there: one on the edge may differ.
    expect(Math.abs((pointAt(found, 0.97)?.letStand ?? 0) - ruled)).toBeLessThanOrEqual(1)
    expect(ruled).toBeGreaterThan(25)
  })

  it('stores nothing, and does not mind what was decided since', async () => {
    const ledger = desk.ports.ledger
    const decisions = (await ledger.decisions('small', '2026-01-01', '2026-05-31')).length
    const settings = await ledger.ruleSettings('small')
    await preview({ days: 20 })
    expect((await ledger.decisions('small', '2026-01-01', '2026-05-31')).length).toBe(decisions)
    expect(await ledger.ruleSettings('small')).toEqual(settings)
  })

  it('takes the days there are where more are asked for', async () => {
    expect((await preview({ days: 3000 })).mornings).toBe(150)
    expect((await preview({})).mornings).toBe(150)
  })

  it('stops when nobody listens any more', async () => {
    const gone = AbortSignal.abort(new Error('gone'))
    await expect(previewRule(desk.ports, { days: 77, signal: gone })).rejects.toThrow('gone')
  })

  it('refuses days and thresholds that are none', async () => {
    for (const query of ['days=0', 'days=x', 'days=9999', 'wrongAYear=-1']) {
      expect([(await ask(query)).statusCode, (await ask(query)).json().code]).toEqual([400, 'ASK_NOT_VALID'])
    }
    expect((await ask('letStandAt=1.5')).json().code).toBe('RULE_THRESHOLD_OUTSIDE')
  })
})
