/** The invented network of the demo, small, through the command line. */
import { stat } from 'node:fs/promises'
import { type DayReview, dayReviewSchema } from '@gaugewright/contract'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openSqliteLedger } from '../src/store/sqlite/openSqliteLedger.ts'
import { type TestWorld, testWorld } from './support/testWorld.ts'

let world: TestWorld
let db: string
const small = ['--gauges', '60', '--years', '1', '--no-serve']

beforeAll(async () => {
  world = await testWorld()
  db = world.path('demo.db')
}, 120_000)
afterAll(() => world.remove())

async function review(path: string): Promise<DayReview> {
  return dayReviewSchema.parse(JSON.parse((await world.gaugewright('day', '--json', '--db', path)).out))
}

describe('gaugewright demo', () => {
  it('makes a network with a morning to decide, a base map and counties with their means', async () => {
    const made = await world.gaugewright('demo', '--db', db, ...small)
    expect(made.code, made.err).toBe(0)
    expect(made.out).toMatch(/60 gauges, \d+ readings up to 2026-07-16/)
    const morning = await review(db)
    expect(morning.docket.length).toBeGreaterThan(4)
    expect(morning.docket.every((row) => row.sentence.length > 20)).toBe(true)
    expect(morning.areas.length).toBeGreaterThan(2)
    for (const area of morning.areas) {
      expect(area.p10Mm).toBeLessThanOrEqual(area.meanMm + 1e-9)
      expect(area.p90Mm).toBeGreaterThanOrEqual(area.meanMm - 1e-9)
    }
  }, 120_000)

  it('uses the demo that is there, and makes the same one anew when asked', async () => {
    const before = await review(db)
    const { mtimeMs } = await stat(db)
    expect((await world.gaugewright('demo', '--db', db, ...small)).code).toBe(0)
    expect((await stat(db)).mtimeMs).toBe(mtimeMs)
    const row = before.docket[0]
    await world.gaugewright('decide', 'latest', row?.code ?? '', 'stands', '--db', db)
    expect((await review(db)).docket.some(({ code }) => code === row?.code)).toBe(false)
    expect((await world.gaugewright('demo', '--db', db, '--fresh', ...small)).code).toBe(0)
    const again = await review(db)
    const typed = (from: DayReview) => from.roll.map(({ code, text, answer }) => ({ code, text, answer }))
    expect(typed(again)).toEqual(typed(before))
    expect(again.docket.map(({ code }) => code)).toEqual(before.docket.map(({ code }) => code))
  }, 120_000)

  it('begins again where its making was broken off', async () => {
    const path = world.path('begun.db')
    const ledger = await openSqliteLedger(path)
    await ledger.saveNetwork({
      ...(await review(db)).network,
      id: 'demo',
      acceptWindowMin: 120,
      docketBelow: 0.5,
    })
    await ledger.close()
    const made = await world.gaugewright('demo', '--db', path, '--gauges', '20', '--years', '1', '--no-serve')
    expect(made.out).toContain('20 gauges')
  }, 120_000)

  it('never takes the place of a real ledger', async () => {
    const path = world.path('real.db')
    const ledger = await openSqliteLedger(path)
    const { network } = await review(db)
    await ledger.saveNetwork({ ...network, id: 'hills', acceptWindowMin: 120, docketBelow: 0.5 })
    await ledger.close()
    const refused = await world.gaugewright('demo', '--db', path, '--fresh', ...small)
    expect([refused.code, refused.err.split(' ')[0]]).toEqual([1, 'LEDGER_NOT_EMPTY'])
    const kept = await openSqliteLedger(path)
    expect((await kept.networks()).map(({ id }) => id)).toEqual(['hills'])
    await kept.close()
  })
})
