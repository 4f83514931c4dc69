import type { DocketRow } from '@gaugewright/contract'
import { describe, expect, it } from 'vitest'
import { decisionOf } from '../../../test/support/records.ts'
import { docketWeight, inDocketOrder } from './docketOrder.ts'

function rowOf(code: string, standsOdds: number, mapChangeMm: number, change: Partial<DocketRow> = {}): DocketRow {
  return {
    readingId: `r-${code}`,
    gaugeId: code,
    code,
    name: code,
    day: '2026-03-03',
    amountUm: 1000,
    isTrace: false,
    text: '1.0',
    standsOdds,
    likeliest: 'decimal',
    suggested: 'amend',
    likeliestOdds: 0.5,
    expectedP10Mm: 0,
    expectedP50Mm: 1,
    expectedP90Mm: 2,
    proposedUm: 100,
    proposedFirstDay: '2026-03-03',
    proposedLastDay: '2026-03-03',
    mapChangeMm,
    weight: docketWeight(standsOdds, mapChangeMm),
    sentence: '',
    decision: null,
    ...change,
  }
}

describe('the order of the docket', () => {
  it('is doubt times map change: a mild doubt that moves the map stands before a great one that moves nothing', () => {
    const order = inDocketOrder([rowOf('SMALL', 0.01, 0.02), rowOf('BIG', 0.6, 0.8), rowOf('MID', 0.2, 0.1)])
    expect(order.map((row) => row.code)).toEqual(['BIG', 'MID', 'SMALL'])
  })

  it('where the map does not change at all, the more doubtful comes first', () => {
    expect(inDocketOrder([rowOf('A', 0.5, 0), rowOf('B', 0.1, 0)]).map((row) => row.code)).toEqual(['B', 'A'])
  })

  it('what was asked stands after what waits for a decision', () => {
    const asked = rowOf('ASKED', 0.01, 3, { decision: { ...decisionOf('d', 'r', 'asked'), amended: null } })
    expect(inDocketOrder([asked, rowOf('OPEN', 0.6, 0.1)]).map((row) => row.code)).toEqual(['OPEN', 'ASKED'])
  })

  it('does not depend on the order given', () => {
    const rows = [rowOf('C', 0.3, 0.2), rowOf('A', 0.3, 0.2), rowOf('B', 0.3, 0.2)]
    expect(inDocketOrder(rows).map((row) => row.code)).toEqual(['A', 'B', 'C'])
    expect(inDocketOrder([...rows].reverse()).map((row) => row.code)).toEqual(['A', 'B', 'C'])
  })
})
