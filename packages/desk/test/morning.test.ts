/** One morning through the HTTP interface, from the roll to a decision and back. Weather and slips are invented. */
import {
  type DayEvidence,
  type DayReview,
  dayReviewSchema,
  draftMessageSchema,
  evidenceSchema,
  exportedDaySchema,
  fieldSchema,
  mapLayersSchema,
  whatIfSchema,
} from '@gaugewright/contract'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { openTestDesk } from './support/openDesk.ts'

type Desk = Awaited<ReturnType<typeof openTestDesk>>
let desk: Desk
const json = { 'content-type': 'application/json' }

async function get<T>(url: string): Promise<T> {
  const response = await desk.app.inject({ method: 'GET', url })
  expect(response.statusCode, response.body.slice(0, 300)).toBe(200)
  return response.json() as T
}

async function post<T>(url: string, payload: unknown, status = 200): Promise<T> {
  const response = await desk.app.inject({ method: 'POST', url, headers: json, payload: JSON.stringify(payload) })
  expect(response.statusCode, response.body.slice(0, 300)).toBe(status)
  return response.json() as T
}

beforeAll(async () => {
  desk = await openTestDesk()
})
afterEach(() => {
  for (const failure of desk.failures.splice(0)) throw failure
})
afterAll(async () => {
  await desk.app.close()
})

describe('the morning', () => {
  it('answers with the roll, the docket, facts and areas in the shape of the contract', async () => {
    const review = dayReviewSchema.parse(await get('/api/days/latest'))
    expect(review.day).toBe(desk.small.lastDay)
    expect(review.roll).toHaveLength(36)
    expect(review.facts).toMatchObject({ expected: 36, read: 35, silent: 1, decided: 0 })
    expect(review.nextDay).toBeNull()
    expect(review.previousDay).toBe('2026-05-30')
  })

  it('puts both slips on the docket, names the slipped point and proposes what was true', async () => {
    const review = await get<DayReview>('/api/days/latest')
    for (const slip of desk.small.slips) {
      const row = review.docket.find((entry) => entry.gaugeId === slip.gaugeId)
      expect(row, slip.kind).toBeDefined()
      expect(row?.likeliest).toBe(slip.kind)
    }
    const decimal = desk.small.slips.find((slip) => slip.kind === 'decimal')
    const row = review.docket.find((entry) => entry.gaugeId === decimal?.gaugeId)
    expect((row?.proposedUm ?? 0) / 1000).toBeCloseTo(decimal?.trueMm ?? 0, 6)
    expect(row?.mapChangeMm).toBeGreaterThan(0.1)
    expect(review.docket[0]?.readingId).toBe(row?.readingId)
  })

  it('asking twice gives the same answer and stores nothing', async () => {
    const before = await desk.ports.ledger.decisions('small', '2000-01-01', '2100-01-01')
    const first = await get<DayReview>('/api/days/latest')
    const second = await get<DayReview>('/api/days/latest')
    expect(second).toEqual(first)
    expect(await desk.ports.ledger.decisions('small', '2000-01-01', '2100-01-01')).toEqual(before)
  })

  it('shows the evidence of a slip: odds, neighbours, days around, words, and a letter without neighbours’ amounts', async () => {
    const slip = desk.small.slips[0]
    const id = `r-${slip?.gaugeId}-${desk.small.lastDay}`
    const evidence = evidenceSchema.parse(await get(`/api/days/latest/evidence/${id}`))
    const odds = evidence.explanations.reduce((sum, explanation) => sum + explanation.odds, 0)
    expect(odds).toBeGreaterThan(0.99)
    expect(odds).toBeLessThan(1.01)
    expect(evidence.explanations[0]?.kind).toBe(slip?.kind)
    expect(evidence.neighbours.length).toBeGreaterThan(3)
    expect(evidence.expectation.levels).toHaveLength(evidence.expectation.mm.length)
    expect(evidence.message).toContain(evidence.reading.text)
    const letter = draftMessageSchema.parse(await get(`/api/days/latest/message/${id}`))
    expect(letter.message).toBe(evidence.message)
    const shown = evidence.neighbours.map(({ amountMm }) => amountMm?.toFixed(1) ?? '').filter((text) => text !== '0.0')
    for (const text of shown) if (text !== evidence.reading.text) expect(evidence.message).not.toContain(` ${text} mm`)
  })

  it('draws the field over the map, and what a proposal would do to it', async () => {
    const field = fieldSchema.parse(await get('/api/days/latest/field'))
    expect(field.meanMm).toHaveLength(field.columns * field.rows)
    expect(field.meanMm.filter((value) => value !== null).length).toBeGreaterThan(100)
    const slip = desk.small.slips[0]
    const readingId = `r-${slip?.gaugeId}-${desk.small.lastDay}`
    const change = { readingId, amountUm: Math.round((slip?.trueMm ?? 0) * 1000) }
    const told = whatIfSchema.parse(await post('/api/what-if', { day: desk.small.lastDay, changes: [change] }))
    expect(told.before.meanMm).toEqual(field.meanMm)
    expect(told.meanAbsoluteChangeMm).toBeGreaterThan(0.1)
    expect(await get<DayReview>('/api/days/latest')).toMatchObject({ facts: { decided: 0 } })
  })

  it('a decision takes the reading off the docket and its amount into the record; undo brings both back', async () => {
    const before = await get<DayReview>('/api/days/latest')
    const slip = desk.small.slips[0]
    const readingId = `r-${slip?.gaugeId}-${desk.small.lastDay}`
    const evidence = await get<DayEvidence>(`/api/days/latest/evidence/${readingId}`)
    const amended = { readingId, verdict: 'amended', amended: evidence.proposal, reason: 'asked by telephone' }
    const decided = await post<DayReview>('/api/decisions', amended)
    const row = decided.roll.find((entry) => entry.readingId === readingId)
    expect(row).toMatchObject({ acceptedUm: evidence.proposal?.amountUm, amountUm: evidence.reading.amountUm })
    expect(row?.decision).toMatchObject({ verdict: 'amended', reason: 'asked by telephone' })
    expect(decided.docket.some((entry) => entry.readingId === readingId)).toBe(false)
    expect(decided.facts.decided).toBe(1)
    // The same key pressed twice is one decision.
    await post<DayReview>('/api/decisions', amended)
    const shown = await get<DayEvidence>(`/api/days/latest/evidence/${readingId}`)
    expect(shown.decisions).toHaveLength(1)
    expect(shown.standsOdds).toBeCloseTo(evidence.standsOdds, 9)
    const undone = await post<DayReview>('/api/decisions/undo', { decisionId: row?.decision?.id })
    expect(undone.docket.map(({ readingId: id }) => id)).toEqual(before.docket.map(({ readingId: id }) => id))
    expect(undone.roll).toEqual(before.roll)
    const kept = await desk.ports.ledger.decisions('small', desk.small.lastDay, desk.small.lastDay)
    expect(kept).toHaveLength(2)
  })

  it('a reading only asked about stays on the docket, last and marked', async () => {
    const before = await get<DayReview>('/api/days/latest')
    const readingId = before.docket[0]?.readingId
    const asked = await post<DayReview>('/api/decisions', { readingId, verdict: 'asked' })
    expect(asked.docket.at(-1)).toMatchObject({ readingId, decision: { verdict: 'asked' } })
    expect(asked.facts.toDecide).toBe(before.facts.toDecide - 1)
    const decisionId = asked.docket.at(-1)?.decision?.id
    await post<DayReview>('/api/decisions/undo', { decisionId })
  })

  it('exports the day as GeoJSON with coarse positions and no observer, and the record as CSV', async () => {
    const day = exportedDaySchema.parse(await get('/api/days/latest/gauges.geojson'))
    expect(day.features).toHaveLength(36)
    for (const { geometry } of day.features) {
      for (const degrees of geometry.coordinates) expect(degrees).toBeCloseTo(Math.round(degrees * 100) / 100, 9)
    }
    expect(JSON.stringify(day)).not.toContain('Observer')
    const csv = await desk.app.inject({ method: 'GET', url: '/api/accepted.csv?from=2026-05-30' })
    expect(csv.headers['content-type']).toContain('text/csv')
    const lines = csv.body.trim().split('\n')
    expect(lines[0]).toBe('gauge,day,amount,first_day,text')
    expect(lines.filter((line) => line.includes('2026-05-31'))).toHaveLength(35)
    expect(lines.some((line) => line.includes('2026-05-29'))).toBe(false)
  })

  it('gives the base map', async () => {
    expect(mapLayersSchema.parse(await get('/api/map')).layers).toEqual([])
  })
})

describe('what the desk refuses', () => {
  const last = '2026-05-31'
  it.each([
    ['GET', '/api/days/2026-02-30', undefined, 400, 'DAY_UNREADABLE'],
    ['GET', '/api/days/1999-01-01', undefined, 404, 'DAY_OUTSIDE_RECORD'],
    ['GET', '/api/days/latest/evidence/nobody', undefined, 404, 'READING_UNKNOWN'],
    ['POST', '/api/decisions', { readingId: 'nobody', verdict: 'stands' }, 404, 'READING_UNKNOWN'],
    ['POST', '/api/decisions', { readingId: 'r-gA1-2026-05-31', verdict: 'fine' }, 400, 'ASK_NOT_VALID'],
    ['POST', '/api/decisions', { readingId: 'r-gA1-2026-05-31', verdict: 'amended' }, 400, 'AMENDED_AMOUNT_MISPLACED'],
    [
      'POST',
      '/api/decisions',
      {
        readingId: 'r-gA1-2026-05-31',
        verdict: 'amended',
        amended: { amountUm: 5, isTrace: false, firstDay: last, lastDay: '2026-05-30' },
      },
      400,
      'AMENDED_DAYS_IMPOSSIBLE',
    ],
    [
      'POST',
      '/api/decisions',
      {
        readingId: 'r-gA1-2026-05-31',
        verdict: 'amended',
        amended: { amountUm: 5, isTrace: true, firstDay: last, lastDay: last },
      },
      400,
      'AMENDED_AMOUNT_IMPOSSIBLE',
    ],
    ['POST', '/api/decisions/undo', { decisionId: 'nothing' }, 404, 'DECISION_UNKNOWN'],
    ['POST', '/api/what-if', { day: last, changes: [{ readingId: 'nobody', amountUm: 1 }] }, 404, 'READING_UNKNOWN'],
    ['GET', '/api/accepted.csv?from=2026-05-02&to=2026-05-01', undefined, 400, 'DAYS_OUT_OF_ORDER'],
    ['GET', '/api/nothing', undefined, 404, 'ROUTE_UNKNOWN'],
    ['GET', '/', undefined, 503, 'SCREENS_NOT_BUILT'],
  ] as const)('%s %s %j: %i %s', async (method, url, payload, status, code) => {
    const response = await desk.app.inject({
      method,
      url,
      ...(payload !== undefined && { headers: json, payload: JSON.stringify(payload) }),
    })
    expect(response.statusCode).toBe(status)
    const problem = response.json()
    expect(problem.code).toBe(code)
    expect(problem.seen.length).toBeGreaterThan(0)
    expect(problem.advice.length).toBeGreaterThan(0)
  })

  it('undoing twice is refused and adds nothing', async () => {
    const readingId = `r-gA1-${last}`
    const review = await post<DayReview>('/api/decisions', { readingId, verdict: 'stands' })
    const decisionId = review.roll.find((row) => row.readingId === readingId)?.decision?.id
    await post('/api/decisions/undo', { decisionId })
    const again = await post<{ code: string }>('/api/decisions/undo', { decisionId }, 409)
    expect(again.code).toBe('DECISION_ALREADY_UNDONE')
  })
})
