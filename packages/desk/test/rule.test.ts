/** The rule that lets sure readings stand by themselves, through the review of a morning. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { reviewDay } from '../src/app/reviewDay.ts'
import { undoDecision } from '../src/app/undoDecision.ts'
import { openTestDesk } from './support/openDesk.ts'

let desk: Awaited<ReturnType<typeof openTestDesk>>
beforeAll(async () => {
  desk = await openTestDesk({}, 150, 0.98)
})
afterAll(async () => {
  await desk.app.close()
})

async function review() {
  const answer = await reviewDay(desk.ports, { day: 'latest' })
  if (!answer.ok) throw new Error(answer.problem.seen)
  return answer.value
}
const decisions = () => desk.ports.ledger.decisions('small', desk.small.lastDay, desk.small.lastDay)

describe('let stand when at least 98 % sure', () => {
  it('decides the sure ones, says that the rule did, and leaves the docket to a person', async () => {
    const { roll, docket, facts } = await review()
    const ruled = roll.filter((row) => row.decision?.by.kind === 'rule')
    expect(ruled.length).toBeGreaterThan(20)
    for (const row of ruled) expect(row.standsOdds).toBeGreaterThanOrEqual(0.98)
    for (const row of roll) if ((row.standsOdds ?? 0) >= 0.98) expect(row.decision?.verdict).toBe('stands')
    expect(docket.every((row) => row.decision === null)).toBe(true)
    expect(facts.decided).toBe(0)
  })

  it('run twice it changes nothing: no row, no odds', async () => {
    const before = await decisions()
    const first = await review()
    expect(await review()).toEqual(first)
    expect(await decisions()).toEqual(before)
  })

  it('keeps out where a person took its decision back, and the reading is then on the docket, sure as it is', async () => {
    const { roll } = await review()
    const row = roll.find(({ decision }) => decision?.by.kind === 'rule')
    await undoDecision(desk.ports, { decisionId: row?.decision?.id ?? '', by: 'coordinator' })
    const after = await review()
    expect(after.roll.find(({ readingId }) => readingId === row?.readingId)?.decision).toBeNull()
    expect(after.docket.find(({ readingId }) => readingId === row?.readingId)?.suggested).toBe('stands')
  })
})
