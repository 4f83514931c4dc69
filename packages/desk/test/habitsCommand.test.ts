/** Habits through the command line, on a ledger file in a folder of its own. */
import { gaugeHabitsSchema, networkHabitsSchema } from '@gaugewright/contract'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { openSqliteLedger } from '../src/store/sqlite/openSqliteLedger.ts'
import { fillLedger } from './support/openDesk.ts'
import { smallNetwork } from './support/smallNetwork.ts'
import { type TestWorld, testWorld } from './support/testWorld.ts'

let world: TestWorld
let db: string
beforeAll(async () => {
  world = await testWorld()
  db = world.path('small.db')
  const small = smallNetwork(200)
  // One observer who writes whole millimetres.
  const readings = small.readings.map((reading) =>
    reading.gaugeId === 'gE2' ? { ...reading, amountUm: 1000 * Math.round(reading.amountUm / 1000) } : reading,
  )
  const ledger = await openSqliteLedger(db)
  await fillLedger(ledger, { ...small, readings })
  await ledger.close()
}, 30_000)
afterAll(() => world.remove())

it('gaugewright habits lists gauges with a habit in words, and in the shape of the contract', async () => {
  const { code, out, err } = await world.gaugewright('habits', '--db', db)
  expect([code, err]).toEqual([0, ''])
  expect(out).toMatch(/^Small Hills, 2025-\d\d-\d\d to 2026-05-31: \d+ of 36 gauges with a habit\n/)
  expect(out).toContain('E2 Hill E2\n')
  expect(out).toContain('It is read to steps of 1 mm')
  for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(100)
  const json = await world.gaugewright('habits', '--json', '--db', db)
  expect(networkHabitsSchema.parse(JSON.parse(json.out)).gauges).toHaveLength(36)
})

it('gaugewright habits GAUGE tells one gauge with what may be done, and fails for a gauge that is not there', async () => {
  const { out } = await world.gaugewright('habits', 'e2', '--db', db)
  expect(out).toMatch(/^E2 Hill E2, /)
  expect(out.replace(/\s+/g, ' ')).toContain('Ask what the scale of the gauge shows.')
  const json = await world.gaugewright('habits', 'e2', '--json', '--db', db)
  expect(gaugeHabitsSchema.parse(JSON.parse(json.out)).habits[0]).toMatchObject({ kind: 'coarse', value: 1 })
  const none = await world.gaugewright('habits', 'Z9', '--db', db)
  expect([none.code, none.err.split(' ')[0]]).toEqual([1, 'GAUGE_NOT_IN_NETWORK'])
})
