import type { Decision } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { decisionOf } from '../../../test/support/records.ts'
import { decisionsInForce } from './decisionsInForce.ts'
import { type RuleAsk, ruleDecisions } from './ruleDecisions.ts'

type Odds = { standsOdds: number; canTell: boolean }
const oddsOf = (standsOdds: number, canTell = true): Odds => ({ standsOdds, canTell })

let count = 0
function run(
  odds: [string, Odds][],
  decisions: Decision[] = [],
  letStandAt: number | null = 0.98,
  more: Partial<RuleAsk> = {},
) {
  return ruleDecisions({
    letStandAt,
    network: { docketBelow: 0.9, language: 'en' },
    odds: new Map(odds),
    decisions,
    newId: () => `id-${++count}`,
    nowUtc: '2026-03-03T08:00:00Z',
    ...more,
  })
}
const standing = (decisions: readonly Decision[]): string[] => [...decisionsInForce(decisions).keys()]

describe('ruleDecisions', () => {
  it('lets stand what is at least as sure as the rule asks, and says how sure it was and by which threshold', () => {
    const made = run([
      ['r1', oddsOf(0.98)],
      ['r2', oddsOf(0.979)],
      ['r3', oddsOf(0.999, false)],
    ])
    expect(made).toHaveLength(1)
    expect(made[0]).toMatchObject({ readingId: 'r1', verdict: 'stands', reason: '98.00 % sure', undoes: null })
    expect(made[0]?.by).toEqual({ kind: 'rule', rule: 'let stand at 0.98' })
  })

  it('rounds down: what is not certain is never called so', () => {
    const network = { docketBelow: 0.9, language: 'es' as const }
    expect(run([['r1', oddsOf(0.999999)]], [], 0.98, { network })[0]?.reason).toBe('99,99 % de seguridad')
  })

  it('run twice it adds nothing, and it keeps out where a person decided or took its decision back', () => {
    const odds: [string, Odds][] = [['r1', oddsOf(0.99)]]
    const first = run(odds)
    expect(run(odds, first)).toEqual([])
    expect(run(odds, [decisionOf('d', 'r1', 'asked')])).toEqual([])
    const takenBack = decisionOf('u', 'r1', 'stands', null, { undoes: first[0]?.id ?? '' })
    expect(run(odds, [...first, takenBack])).toEqual([])
    for (const letStandAt of [0.5, 0.995, null]) expect(run(odds, [...first, takenBack], letStandAt)).toEqual([])
  })

  it('with no rule it decides nothing', () => {
    expect(run([['r1', oddsOf(1)]], [], null)).toEqual([])
  })

  it('a stricter setting takes back what it would not have let stand, and only that; the old rows stay', () => {
    const odds: [string, Odds][] = [
      ['r1', oddsOf(0.985)],
      ['r2', oddsOf(0.997)],
    ]
    const first = run(odds)
    const second = run(odds, first, 0.99)
    expect(second).toHaveLength(1)
    expect(second[0]).toMatchObject({
      readingId: 'r1',
      undoes: first[0]?.id,
      by: { kind: 'rule', rule: 'let stand at 0.99' },
      reason: '98.50 % sure; the rule asks for 99.00 %',
    })
    expect(standing([...first, ...second])).toEqual(['r2'])
    expect(run(odds, [...first, ...second], 0.99)).toEqual([])
  })

  it('setting the old one again brings back what it let stand; switching off takes back all that rules decided', () => {
    const odds: [string, Odds][] = [
      ['r1', oddsOf(0.985)],
      ['r2', oddsOf(0.997)],
      ['r3', oddsOf(0.992)],
    ]
    const person = decisionOf('p', 'r3', 'stands')
    let all = [person, ...run(odds, [person])]
    expect(standing(all)).toEqual(['r3', 'r1', 'r2'])
    all = [...all, ...run(odds, all, null)]
    expect(standing(all)).toEqual(['r3'])
    expect(all.at(-1)?.reason).toBe('the rule is off')
    all = [...all, ...run(odds, all, 0.98)]
    expect(standing(all).sort()).toEqual(['r1', 'r2', 'r3'])
  })

  it('a looser setting leaves what stands as it is, with the threshold that was used', () => {
    const first = run([['r1', oddsOf(0.99)]])
    expect(run([['r1', oddsOf(0.99)]], first, 0.9)).toEqual([])
  })

  it('lets go of a reading that later reports put in doubt, but not of one that only slipped a little', () => {
    const first = run([['r1', oddsOf(0.981)]])
    expect(run([['r1', oddsOf(0.95)]], first)).toEqual([])
    const later = run([['r1', oddsOf(0.41)]], first)
    expect(later[0]).toMatchObject({ undoes: first[0]?.id, reason: '41.00 % sure; the rule asks for 98.00 %' })
    expect(run([['r1', oddsOf(0.981, false)]], first)).toHaveLength(1)
  })
})
