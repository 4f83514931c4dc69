import type { WireDecision } from '@gaugewright/contract'
import { expect, it } from 'vitest'
import { decisionInForce } from './decisionInForce.ts'

const decision = (id: string, undoes: string | null = null): WireDecision => ({
  id,
  readingId: 'r',
  verdict: 'stands',
  amended: null,
  by: { kind: 'rule', rule: 'let stand at 0.98' },
  reason: '',
  decidedAtUtc: '2026-03-02T07:00:00Z',
  undoes,
})

it('decisionInForce is the latest that was not taken back; a row that takes back is none itself', () => {
  const [one, two] = [decision('1'), decision('2')]
  expect(decisionInForce([])).toBeNull()
  expect(decisionInForce([one, two])).toBe(two)
  expect(decisionInForce([one, two, decision('3', '2')])).toBe(one)
  expect(decisionInForce([one, decision('3', '1')])).toBeNull()
})
