/** `gaugewright decide … --what-if` on a ledger file: told in words or as JSON, and nothing decided. */
import { type DayReview, whatIfSchema } from '@gaugewright/contract'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openSqliteLedger } from '../src/store/sqlite/openSqliteLedger.ts'
import { fillLedger } from './support/openDesk.ts'
import { smallNetwork } from './support/smallNetwork.ts'
import { type TestWorld, testWorld } from './support/testWorld.ts'

let world: TestWorld
let db: string

beforeAll(async () => {
  world = await testWorld()
  db = world.path('small.db')
  const ledger = await openSqliteLedger(db)
  await fillLedger(ledger, smallNetwork(90, { language: 'es' }))
  await ledger.close()
})
afterAll(() => world.remove())

const decide = (...words: string[]) => world.gaugewright('decide', 'latest', ...words, '--db', db)
const review = async () => JSON.parse((await world.gaugewright('day', '--json', '--db', db)).out) as DayReview

describe('gaugewright decide --what-if', () => {
  it('tells what letting a slip stand would do to its neighbours, in the network’s language, and decides nothing', async () => {
    const before = await review()
    const { code, out, err } = await decide('C3', 'stands', '--what-if')
    expect([code, err]).toEqual([0, ''])
    expect(out).toMatch(/^C3 Hill C3, 2026-05-31: si se da por válida\. No se decidió nada\.$/m)
    expect(out).toMatch(/^ C4 .*>99 % .*pasa a estar por decidir/m)
    expect(out).toContain('El mapa no cambiaría.')
    expect(await review()).toEqual(before)
  })

  it('as JSON it has the shape of the contract, for every verdict', async () => {
    for (const verdict of ['stands', 'amended', 'set-aside', 'asked']) {
      const told = whatIfSchema.parse(JSON.parse((await decide('C3', verdict, '--what-if', '--json')).out))
      expect(told.toDecideBefore - told.toDecideAfter, verdict).toBe(
        verdict === 'asked' ? 0 : 1 - told.findings.filter(({ after }) => after.toDecide).length,
      )
      expect(told.meanAbsoluteChangeMm > 0).toBe(verdict === 'amended' || verdict === 'set-aside')
    }
  })

  it.each([
    [['C3', 'perhaps', '--what-if'], 2, 'VERDICT_UNKNOWN'],
    [['F6', 'stands', '--what-if'], 1, 'GAUGE_NOT_READ'],
    [['C3', 'amended', '--amount', '3', '--first-day', '2026-01-01', '--what-if'], 1, 'AMENDED_DAYS_IMPOSSIBLE'],
  ])('%j ends with %i and %s', async (words, code, problem) => {
    const ran = await decide(...words)
    expect([ran.code, ran.err.split(' ')[0]]).toEqual([code, problem])
  })
})
