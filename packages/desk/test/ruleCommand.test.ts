/** The rule through the command line, on a ledger file in a folder of its own. */
import { rulePreviewSchema, ruleSchema } from '@gaugewright/contract'
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
  await fillLedger(ledger, smallNetwork(60))
  await ledger.close()
})
afterAll(() => world.remove())

const rule = (...words: string[]) => world.gaugewright('rule', ...words, '--db', db)

describe('gaugewright rule', () => {
  it('says what is in force, by whom and why, and what was set before', async () => {
    expect((await rule()).out).toMatch(/Small Hills: no rule, everything is left to a person/)
    const set = await rule('set', '0.98', '--why', 'two weeks on trial', '--by', 'B. Coordinator')
    expect([set.code, set.err]).toEqual([0, ''])
    expect(set.out).toContain('let stand at 0.98 and above')
    await rule('set', 'off', '--why', 'storm season')
    const { out } = await rule()
    expect(out).toMatch(
      /no rule.*\n.*\nSet \S+ by coordinator: storm season\n\nBefore:\n {2}let stand at 0.98 and above, set \S+ by B. Coordinator: two weeks on trial/,
    )
    const { letStandAt, history } = ruleSchema.parse(JSON.parse((await rule('--json')).out))
    expect([letStandAt, ...history.map((setting) => setting.letStandAt)]).toEqual([null, null, 0.98])
  })

  it('shows what it would do at the usual thresholds, marks the one asked for, and finds the one wished for', async () => {
    const { code, err, out } = await rule('preview', '--days', '30', '--at', '0.9876', '--wrong-a-year', '12')
    expect([code, err]).toEqual([0, ''])
    expect(out).toMatch(/^30 mornings, 2026-05-02 to 2026-05-31/)
    for (const usual of ['0.9 ', '0.95 ', '0.98 ', '0.99 ', '0.995 ', '0.9876 \\*'])
      expect(out).toMatch(new RegExp(`^ ${usual}`, 'm'))
    expect(out).toMatch(/For at most 12 wrong readings a year: let stand at 0\.\d+\./)
    const answer = rulePreviewSchema.parse(JSON.parse((await rule('preview', '--days', '30', '--json')).out))
    expect(answer.mornings).toBe(30)
  })

  it('ends with 2 on what it cannot read, with 1 on what it will not do, each in one line', async () => {
    for (const [words, code, start] of [
      [['set', 'high', '--why', 'x'], 2, 'RULE_THRESHOLD_OUTSIDE  "high".'],
      [['set', '1.5', '--why', 'x'], 1, 'RULE_THRESHOLD_OUTSIDE  a threshold of 1.5.'],
      [['set', '0.9', '--why', ''], 1, 'RULE_WHY_MISSING'],
      [['preview', '--days', 'many'], 2, 'ASK_NOT_VALID  days "many".'],
      [['preview', '--at', '2'], 1, 'RULE_THRESHOLD_OUTSIDE'],
    ] as const) {
      const ran = await rule(...words)
      expect([ran.code, ran.err.split('\n').length]).toEqual([code, 2])
      expect(ran.err.startsWith(start), ran.err).toBe(true)
    }
    expect((await rule('set', '0.9')).code).toBe(2)
  })
})
