import type { DayEvidence, DecideAsk, WhatIf } from '@gaugewright/contract'
import { QueryClient } from '@tanstack/react-query'
import { describe, expect, it } from 'vitest'
import { keys } from '../../api/queries.ts'
import { actsFor, firstAct, foreseen, whatIfAskOf } from './whatIfAsk.ts'

const day = '2026-03-03'
const reported = { amountUm: 41_000, isTrace: false }
const proposal = { amountUm: 4100, isTrace: false, firstDay: day, lastDay: day }
const known = (suggested: DayEvidence['suggested'], proposed: DayEvidence['proposal'] = proposal) =>
  ({ day, readingId: 'r', suggested, proposal: proposed, reading: reported }) as unknown as DayEvidence
const decision = (verdict: DecideAsk['verdict'], amended: DecideAsk['amended'] = null): DecideAsk => ({
  readingId: 'r',
  verdict,
  amended,
  reason: 'seen',
  by: 'me',
})

describe('what may be weighed', () => {
  it('is first what the desk offers first; the proposal where the observer is to be asked; aside without one', () => {
    expect(firstAct(known('stands'))).toBe('stands')
    expect(firstAct(known('amend'))).toBe('amended')
    expect(firstAct(known('ask'))).toBe('amended')
    expect(firstAct(known('ask', null))).toBe('set aside')
    expect(actsFor(known('ask', null))).toEqual(['stands', 'set aside'])
  })
  it('asks with the amount as reported for one that stands, and none for one set aside', () => {
    expect(whatIfAskOf(known('ask'), 'stands').changes).toEqual([{ readingId: 'r', ...reported }])
    expect(whatIfAskOf(known('ask'), 'amended').changes).toEqual([{ readingId: 'r', ...proposal }])
    expect(whatIfAskOf(known('ask'), 'set aside').changes[0]?.amountUm).toBeNull()
  })
})

describe('foreseen', () => {
  const client = new QueryClient()
  const told = { toDecideAfter: 3 } as WhatIf
  client.setQueryData(keys.whatIf(whatIfAskOf(known('amend'), 'amended')), told)

  it('is what was told of the very same decision, and of no other', () => {
    expect(foreseen(client, day, decision('amended', { ...proposal }), reported)).toBe(told)
    for (const other of [
      decision('amended', { ...proposal, amountUm: 4200 }),
      decision('amended', { ...proposal, firstDay: '2026-03-02' }),
      decision('stands'),
      decision('set aside'),
      decision('asked'),
    ])
      expect(foreseen(client, day, other, reported)).toBeNull()
  })
  it('no longer holds once something else was decided', async () => {
    await client.invalidateQueries({ queryKey: keys.whatIfOfDay(day) })
    expect(foreseen(client, day, decision('amended', proposal), reported)).toBeNull()
  })
})
