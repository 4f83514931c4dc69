import { describe, expect, it } from 'vitest'
import { decisionOf } from '../../../test/support/records.ts'
import { ruleDecisions } from './ruleDecisions.ts'

type Odds = { standsOdds: number; canTell: boolean }
const oddsOf = (standsOdds: number, canTell = true): Odds => ({ standsOdds, canTell })

function run(odds: [string, Odds][], decisions: ReturnType<typeof decisionOf>[] = []) {
  let count = 0
  return ruleDecisions({
    letStandAt: 0.98,
    odds: new Map(odds),
    decisions,
    newId: () => `id-${++count}`,
    nowUtc: '2026-03-03T08:00:00Z',
  })
}

describe('ruleDecisions', () => {
  it('lets stand what is at least as sure as the network asks, and says how sure it was', () => {
    const made = run([
      ['r1', oddsOf(0.98)],
      ['r2', oddsOf(0.979)],
      ['r3', oddsOf(0.999, false)],
    ])
    expect(made).toHaveLength(1)
    expect(made[0]).toMatchObject({ readingId: 'r1', verdict: 'stands', reason: '98.0 % sure' })
    expect(made[0]?.by).toEqual({ kind: 'rule', rule: 'let stand at 0.98' })
  })

  it('run twice it adds nothing, and it keeps out where a person decided or took its decision back', () => {
    const odds: [string, Odds][] = [['r1', oddsOf(0.99)]]
    const first = run(odds)
    expect(run(odds, first)).toEqual([])
    expect(run(odds, [decisionOf('d', 'r1', 'asked')])).toEqual([])
    expect(run(odds, [...first, decisionOf('u', 'r1', 'stands', null, { undoes: 'id-1' })])).toEqual([])
  })
})
