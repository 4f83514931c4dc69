/** What a decision would do to the morning: told before it is made, nothing stored. Weather and slips are invented. */
import { leastOddsChange, mostChangedFindings, type WhatIf } from '@gaugewright/contract'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { decide } from '../src/app/decide.ts'
import { reviewDay } from '../src/app/reviewDay.ts'
import { undoDecision } from '../src/app/undoDecision.ts'
import { whatIf } from '../src/app/whatIf.ts'
import type { Answer } from '../src/ports/answer.ts'
import { openTestDesk } from './support/openDesk.ts'

let desk: Awaited<ReturnType<typeof openTestDesk>>
beforeAll(async () => {
  desk = await openTestDesk()
})
afterAll(() => desk.app.close())

function taken<T>(answer: Answer<T>): T {
  if (answer.ok) return answer.value
  throw new Error(`${answer.problem.code}: ${answer.problem.seen}`)
}
const idOf = (code: string) => `r-g${code}-${desk.small.lastDay}`
const review = async () => taken(await reviewDay(desk.ports, { day: 'latest' }))
const rowOf = async (code: string) => {
  const row = (await review()).roll.find((entry) => entry.code === code)
  if (row === undefined || row.amountUm === null) throw new Error(`${code} was not read`)
  return { ...row, amountUm: row.amountUm }
}
const ask = async (code: string, amountUm: number | null, more: { firstDay?: string; lastDay?: string } = {}) =>
  taken(
    await whatIf(desk.ports, {
      day: desk.small.lastDay,
      changes: [{ readingId: idOf(code), amountUm, isTrace: false, ...more }],
    }),
  )
const oddsOf = (told: WhatIf, code: string) => told.findings.find((finding) => finding.code === code)

describe('whatIf', () => {
  it('letting a slipped point stand puts right neighbours in doubt, and says which come onto the docket', async () => {
    const told = await ask('C3', (await rowOf('C3')).amountUm)
    const codes = told.findings.map(({ code }) => code)
    expect(codes).toEqual(expect.arrayContaining(['B3', 'C2', 'C4']))
    expect(codes).not.toContain('C3')
    for (const { before, after } of told.findings) expect(after.standsOdds).toBeLessThan(before.standsOdds)
    const newOnDocket = told.findings.filter(({ before, after }) => !before.toDecide && after.toDecide)
    expect(newOnDocket.length).toBeGreaterThan(0)
    expect(told.toDecideAfter).toBe(told.toDecideBefore - 1 + newOnDocket.length)
    expect(told.meanAbsoluteChangeMm).toBe(0)
  })

  it('setting aside a wrong reading that was let stand raises its neighbours’ odds of standing and clears their doubts', async () => {
    taken(await decide(desk.ports, { readingId: idOf('C3'), verdict: 'stands', amended: null, reason: '', by: 'me' }))
    const decision = (await rowOf('C3')).decision
    const { standsOdds } = await rowOf('C4')
    const told = await ask('C3', null)
    const neighbour = oddsOf(told, 'C4')
    expect(neighbour?.before).toMatchObject({ canTell: true, standsOdds, toDecide: true })
    expect(neighbour?.before.standsOdds).toBeLessThan(0.5)
    expect(neighbour?.after.standsOdds).toBeGreaterThan(0.95)
    expect(neighbour?.after.toDecide).toBe(false)
    expect(told.meanAbsoluteChangeMm).toBeGreaterThan(0.1)
    taken(await undoDecision(desk.ports, { decisionId: decision?.id ?? '', by: 'me' }))
  })

  it('amending a slip to what was true moves the map toward the truth and puts nobody in doubt', async () => {
    const slip = desk.small.slips.find(({ kind }) => kind === 'false-zero')
    const told = await ask('D5', Math.round((slip?.trueMm ?? 0) * 1000))
    expect(told.findings).toEqual([])
    expect(told.findingCount).toBe(0)
    expect(told.toDecideAfter).toBe(told.toDecideBefore - 1)
    const meanOf = (values: (number | null)[]) => values.reduce<number>((sum, value) => sum + (value ?? 0), 0)
    expect(meanOf(told.after.meanMm)).toBeGreaterThan(meanOf(told.before.meanMm))
  })

  it('an amount put on other days is off this day’s map, as one set aside', async () => {
    const aside = await ask('D5', null)
    const { amountUm } = await rowOf('D5')
    const otherDay = { firstDay: '2026-05-30', lastDay: '2026-05-30' }
    for (const moved of [await ask('D5', amountUm, otherDay), await ask('D5', 52_300, { firstDay: '2026-05-30' })])
      expect(moved.after.meanMm).toEqual(aside.after.meanMm)
  })

  it('tells the largest changes first, only those that matter, at most a handful, and counts them all', async () => {
    const told = await ask('C3', (await rowOf('C3')).amountUm)
    const moved = told.findings.map(({ before, after }) => Math.abs(after.standsOdds - before.standsOdds))
    expect(moved).toEqual([...moved].sort((a, b) => b - a))
    expect(moved.length).toBeLessThanOrEqual(mostChangedFindings)
    expect(told.findingCount).toBeGreaterThanOrEqual(moved.length)
    for (const [index, { before, after }] of told.findings.entries()) {
      const isOtherwise = before.toDecide !== after.toDecide || before.likeliest !== after.likeliest
      expect((moved[index] ?? 0) >= leastOddsChange || isOtherwise).toBe(true)
    }
  })

  it('without any change the day is as it is; and asking stores nothing', async () => {
    const before = await review()
    const stored = await desk.ports.ledger.decisions('small', '2000-01-01', '2100-01-01')
    const told = taken(await whatIf(desk.ports, { day: desk.small.lastDay, changes: [] }))
    expect(told).toMatchObject({ findings: [], findingCount: 0, meanAbsoluteChangeMm: 0 })
    expect(told.after).toEqual(told.before)
    expect([told.toDecideBefore, told.toDecideAfter]).toEqual([before.facts.toDecide, before.facts.toDecide])
    await ask('C3', null)
    expect(await review()).toEqual(before)
    expect(await desk.ports.ledger.decisions('small', '2000-01-01', '2100-01-01')).toEqual(stored)
  })

  it.each([
    [{ amountUm: 5000, firstDay: '2026-05-31', lastDay: '2026-05-30' }, 'AMENDED_DAYS_IMPOSSIBLE'],
    [{ amountUm: -100 }, 'AMENDED_AMOUNT_IMPOSSIBLE'],
    [{ amountUm: 20_000_000 }, 'AMENDED_AMOUNT_IMPOSSIBLE'],
    [{ amountUm: 100, isTrace: true }, 'AMENDED_AMOUNT_IMPOSSIBLE'],
  ])('refuses what could not be decided either: %j is %s', async (change, code) => {
    const changes = [{ readingId: idOf('C3'), isTrace: false, ...change }]
    const answer = await whatIf(desk.ports, { day: desk.small.lastDay, changes })
    expect(answer).toMatchObject({ ok: false, problem: { code } })
  })
})
