/** The rule as a setting: set, changed, set back, through HTTP; what it decided before, and what a person decided. */
import { type DayReview, dayReviewSchema, type Rule, ruleSchema } from '@gaugewright/contract'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { buildServer } from '../src/server/buildServer.ts'
import { openMemoryLedger } from '../src/store/memory/memoryLedger.ts'
import { openTestDesk, portsOver } from './support/openDesk.ts'

type Desk = Awaited<ReturnType<typeof openTestDesk>>
let desk: Desk
const json = { 'content-type': 'application/json' }

beforeAll(async () => {
  desk = await openTestDesk()
})
afterEach(() => {
  for (const failure of desk.failures.splice(0)) throw failure
})
afterAll(async () => {
  await desk.app.close()
})

async function read(): Promise<Rule> {
  return ruleSchema.parse((await desk.app.inject({ method: 'GET', url: '/api/rule' })).json())
}
async function set(letStandAt: number | null, why: string, by?: string) {
  const payload = JSON.stringify({ letStandAt, why, ...(by && { by }) })
  return desk.app.inject({ method: 'POST', url: '/api/rule', headers: json, payload })
}
async function review(): Promise<DayReview> {
  return dayReviewSchema.parse((await desk.app.inject({ method: 'GET', url: '/api/days/latest' })).json())
}
async function decide(readingId: string, verdict: string): Promise<void> {
  const payload = JSON.stringify({ readingId, verdict, by: 'A. Person' })
  await desk.app.inject({ method: 'POST', url: '/api/decisions', headers: json, payload })
}
const ruledBy = ({ roll }: DayReview) =>
  new Map(
    roll.flatMap(({ code, decision }) => (decision?.by.kind === 'rule' ? [[code, decision.by.rule] as const] : [])),
  )

describe('the rule as a setting', () => {
  it('is off until somebody sets it: nothing is decided, and what is in doubt is on the docket', async () => {
    expect(await read()).toMatchObject({ letStandAt: null, docketBelow: 0.5, history: [] })
    const { roll, docket } = await review()
    expect(roll.every(({ decision }) => decision === null)).toBe(true)
    for (const row of docket) expect(row.standsOdds).toBeLessThan(0.5)
  })

  it('once set, it lets the sure ones stand and leaves everything else to a person', async () => {
    const answer = ruleSchema.parse((await set(0.9, '  a first try ', 'B. Coordinator')).json())
    expect(answer.letStandAt).toBe(0.9)
    expect(answer.history).toMatchObject([{ letStandAt: 0.9, why: 'a first try', by: 'B. Coordinator' }])
    const { roll, docket } = await review()
    const waiting = new Set(docket.map(({ readingId }) => readingId))
    for (const { decision, readingId, standsOdds } of roll) {
      if (readingId === null || standsOdds === null) continue
      expect(waiting.has(readingId)).toBe(decision === null)
      expect(decision !== null).toBe(standsOdds >= 0.9)
    }
  })

  it('made stricter, it takes back what it would not have let stand; decisions by persons stay as they are', async () => {
    const before = ruledBy(await review())
    const { roll } = await review()
    const surest = roll
      .filter(({ decision }) => decision?.by.kind === 'rule')
      .sort((a, b) => (a.standsOdds ?? 0) - (b.standsOdds ?? 0))
    const [leastSure, nextSure] = surest
    await decide(nextSure?.readingId ?? '', 'asked')
    const strict = 0.9999
    expect((await set(strict, 'too much slipped through')).statusCode).toBe(200)
    const after = ruledBy(await review())
    expect(after.size).toBeLessThan(before.size)
    for (const [code, rule] of after) expect([before.get(code), rule]).toEqual(['let stand at 0.9', 'let stand at 0.9'])
    const now = await review()
    expect(now.docket.some((row) => row.standsOdds >= 0.9 && row.suggested === 'stands')).toBe(true)
    expect(now.roll.find(({ code }) => code === leastSure?.code)?.decision).toBeNull()
    expect(now.roll.find(({ code }) => code === nextSure?.code)?.decision).toMatchObject({
      verdict: 'asked',
      by: { kind: 'person', name: 'A. Person' },
    })
  })

  it('setting the old one again undoes, and all that was set stays to be read, newest first', async () => {
    const asked = (await review()).roll.find(({ decision }) => decision?.verdict === 'asked')
    await set(0.9, 'back to where it was')
    const { letStandAt, history } = await read()
    expect(letStandAt).toBe(0.9)
    expect(history.map((setting) => setting.letStandAt)).toEqual([0.9, 0.9999, 0.9])
    const { roll } = await review()
    for (const row of roll) {
      if (row.code === asked?.code || row.standsOdds === null) continue
      expect(row.decision?.by.kind === 'rule').toBe(row.standsOdds >= 0.9)
    }
    expect(roll.find(({ code }) => code === asked?.code)?.decision?.verdict).toBe('asked')
  })

  it('switched off, it decides nothing and vouches for nothing', async () => {
    await set(null, 'I look at all of them myself for a while')
    expect(ruledBy(await review()).size).toBe(0)
    for (const row of (await review()).docket) expect(row.decision === null ? row.standsOdds : 0).toBeLessThan(0.5)
    const decisions = await desk.ports.ledger.decisions('small', desk.small.lastDay, desk.small.lastDay)
    expect(decisions.filter(({ by, undoes }) => by.kind === 'rule' && undoes === null).length).toBeGreaterThan(30)
  })

  it('the same again adds nothing; odds that are none, and a setting without a reason, are refused', async () => {
    const before = await read()
    await set(null, 'again')
    for (const [letStandAt, why, code] of [
      [1, 'certain', 'RULE_THRESHOLD_OUTSIDE'],
      [0.4999, 'loose', 'RULE_THRESHOLD_OUTSIDE'],
      [0.98765, 'five decimals', 'RULE_THRESHOLD_OUTSIDE'],
      [0.98, '   ', 'RULE_WHY_MISSING'],
    ] as const) {
      const response = await set(letStandAt, why)
      expect([response.statusCode, response.json().code]).toEqual([400, code])
    }
    const noNumber = await desk.app.inject({ method: 'POST', url: '/api/rule', headers: json, payload: '{"why":"x"}' })
    expect(noNumber.json().code).toBe('ASK_NOT_VALID')
    expect(await read()).toEqual(before)
  })

  it('an empty ledger says so', async () => {
    const app = await buildServer(portsOver(openMemoryLedger()), { screens: '/nowhere' })
    for (const [method, url, payload] of [
      ['GET', '/api/rule', undefined],
      ['GET', '/api/rule/preview', undefined],
      ['POST', '/api/rule', '{"letStandAt":0.98,"why":"x"}'],
    ] as const) {
      const response = await app.inject({ method, url, headers: json, ...(payload && { payload }) })
      expect([response.statusCode, response.json().code]).toEqual([404, 'LEDGER_EMPTY'])
    }
    await app.close()
  })
})
