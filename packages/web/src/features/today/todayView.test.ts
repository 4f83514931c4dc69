import type { DayReview, DocketRow, RollRow, WireDecision } from '@gaugewright/contract'
import { describe, expect, it } from 'vitest'
import {
  areaEffects,
  bestGuess,
  docketParts,
  isProvisional,
  lastDecision,
  nextToDecide,
  provisionalDecision,
  stepIn,
  withDecision,
} from './todayView.ts'

function decision(readingId: string, over: Partial<WireDecision> = {}): WireDecision {
  return {
    id: `d-${readingId}`,
    readingId,
    verdict: 'stands',
    amended: null,
    by: { kind: 'person', name: 'coordinator' },
    reason: '',
    decidedAtUtc: '2026-11-26T08:00:00Z',
    undoes: null,
    ...over,
  }
}

function docketRow(readingId: string, weight: number, made: WireDecision | null = null): DocketRow {
  return {
    readingId,
    gaugeId: `g-${readingId}`,
    code: readingId.toUpperCase(),
    name: `Gauge ${readingId}`,
    day: '2026-11-26',
    amountUm: 25_400,
    isTrace: false,
    text: '1.00',
    standsOdds: 0.2,
    likeliest: 'decimal',
    likeliestOdds: 0.7,
    suggested: 'amend',
    expectedP10Mm: 1,
    expectedP50Mm: 2,
    expectedP90Mm: 4,
    proposedUm: 2540,
    proposedFirstDay: '2026-11-26',
    proposedLastDay: '2026-11-26',
    mapChangeMm: weight,
    weight,
    sentence: '',
    decision: made,
  }
}

function rollRow(readingId: string, made: WireDecision | null = null): RollRow {
  return {
    gaugeId: `g-${readingId}`,
    code: readingId.toUpperCase(),
    name: `Gauge ${readingId}`,
    area: 'Aldermere',
    observerName: null,
    latDeg: 44,
    lonDeg: -33,
    elevationM: null,
    answer: 'read',
    readingId,
    amountUm: 25_400,
    isTrace: false,
    text: '1.00',
    spanDays: 1,
    endsAtUtc: null,
    standsOdds: 0.2,
    decision: made,
    acceptedUm: 25_400,
  }
}

function review(docket: DocketRow[], roll: RollRow[]): DayReview {
  return {
    network: { id: 'n', name: 'N', unit: 'in', timeZone: 'UTC', readingTime: '07:00', language: 'en' },
    day: '2026-11-26',
    previousDay: null,
    nextDay: null,
    firstDay: '2026-11-26',
    lastDay: '2026-11-26',
    facts: {
      expected: roll.length,
      read: roll.length,
      late: 0,
      multiDayOpen: 0,
      away: 0,
      silent: 0,
      toDecide: docket.filter((row) => !row.decision).length,
      decided: 0,
      wet: 2,
      largestUm: null,
      largestGauge: null,
    },
    roll,
    docket,
    areas: [],
    modelVersion: 'm',
  }
}

const three = () =>
  review([docketRow('a', 1), docketRow('b', 3), docketRow('c', 2)], [rollRow('a'), rollRow('b'), rollRow('c')])
const ids = (rows: readonly { readingId: string | null }[]) => rows.map((row) => row.readingId)

describe('docketParts', () => {
  it('puts the weightiest first and keeps asked readings apart from those to decide', () => {
    const asked = decision('b', { verdict: 'asked' })
    const day = review([docketRow('a', 1), docketRow('b', 3, asked), docketRow('c', 2)], [rollRow('b', asked)])
    expect(ids(docketParts(day).toDecide)).toEqual(['c', 'a'])
    expect(ids(docketParts(day).asked)).toEqual(['b'])
    expect(docketParts(day).decided).toEqual([])
  })

  it('lists what a person decided, the latest first, and leaves the rules out', () => {
    const early = decision('a', { decidedAtUtc: '2026-11-26T08:00:01Z' })
    const late = decision('b', { decidedAtUtc: '2026-11-26T08:00:02Z' })
    const rule = decision('c', { by: { kind: 'rule', rule: 'let-stand' } })
    const day = review([], [rollRow('a', early), rollRow('b', late), rollRow('c', rule)])
    expect(ids(docketParts(day).decided)).toEqual(['b', 'a'])
  })
})

describe('nextToDecide', () => {
  it('goes on below the decided row, then to the top, then nowhere', () => {
    expect(nextToDecide(three(), 'b')?.readingId).toBe('c')
    expect(nextToDecide(three(), 'a')?.readingId).toBe('b')
    expect(nextToDecide(review([docketRow('a', 1)], []), 'a')).toBeNull()
  })
})

describe('withDecision', () => {
  it('amends docket, roll and counts without touching the day given', () => {
    const day = three()
    const amended = { amountUm: 2540, isTrace: false, firstDay: '2026-11-26', lastDay: '2026-11-26' }
    const after = withDecision(day, 'b', decision('b', { verdict: 'amended', amended }))
    expect(after.facts).toMatchObject({ toDecide: 2, decided: 1 })
    expect(after.roll[1]?.acceptedUm).toBe(2540)
    expect(day.facts.toDecide).toBe(3)
    expect(day.roll[1]?.acceptedUm).toBe(25_400)
  })

  it('a reading set aside is accepted nowhere; taking that back restores its own amount', () => {
    const aside = withDecision(three(), 'a', decision('a', { verdict: 'set aside' }))
    expect(aside.roll[0]?.acceptedUm).toBeNull()
    const back = withDecision(aside, 'a', null)
    expect(back.roll[0]?.acceptedUm).toBe(25_400)
    expect(back.facts).toMatchObject({ toDecide: 3, decided: 0 })
  })

  it('asking an observer decides nothing, but is no longer to decide', () => {
    const after = withDecision(three(), 'a', decision('a', { verdict: 'asked' }))
    expect(after.facts).toMatchObject({ toDecide: 2, decided: 0 })
  })
})

describe('lastDecision', () => {
  it('is the latest decision of a person', () => {
    const rule = decision('c', { by: { kind: 'rule', rule: 'r' }, decidedAtUtc: '2026-11-26T09:00:00Z' })
    const day = review(
      [],
      [
        rollRow('a', decision('a')),
        rollRow('b', decision('b', { decidedAtUtc: '2026-11-26T08:30:00Z' })),
        rollRow('c', rule),
      ],
    )
    expect(lastDecision(day)?.readingId).toBe('b')
    expect(lastDecision(three())).toBeNull()
  })
  it('takes a decision still on its way before any stored one, whatever the clocks say', () => {
    const ask = { readingId: 'b', verdict: 'stands' as const, amended: null, reason: '', by: 'coordinator' }
    const day = review(
      [],
      [rollRow('a', decision('a')), rollRow('b', provisionalDecision(ask, '2026-11-26T07:00:00Z'))],
    )
    expect(lastDecision(day)?.readingId).toBe('b')
  })
})

it('provisionalDecision is known as not stored yet', () => {
  const ask = { readingId: 'a', verdict: 'stands' as const, amended: null, reason: 'seen', by: 'coordinator' }
  const made = provisionalDecision(ask, '2026-11-26T08:00:00Z')
  expect(isProvisional(made)).toBe(true)
  expect(isProvisional(decision('a'))).toBe(false)
  expect(made.reason).toBe('seen')
})

it('bestGuess says that a reading stands where that has better odds than the likeliest mistake', () => {
  expect(bestGuess(docketRow('a', 1))).toEqual({ kind: 'decimal', odds: 0.7 })
  expect(bestGuess({ ...docketRow('a', 1), standsOdds: 0.8, likeliestOdds: 0.15 })).toEqual({
    kind: 'stands',
    odds: 0.8,
  })
})

it('stepIn stops at both ends and begins at the first', () => {
  const items = ['a', 'b', 'c']
  expect(stepIn(items, (x) => x === 'b', 1)).toBe('c')
  expect(stepIn(items, (x) => x === 'c', 1)).toBe('c')
  expect(stepIn(items, (x) => x === 'a', -1)).toBe('a')
  expect(stepIn(items, (x) => x === 'z', 1)).toBe('a')
  expect(stepIn([], () => true, 1)).toBeNull()
})

it('areaEffects names the county that moved most first, and leaves out what cannot be seen', () => {
  const before = [
    { name: 'A', meanMm: 1 },
    { name: 'B', meanMm: 5 },
    { name: 'C', meanMm: 2 },
  ]
  const after = [
    { name: 'A', meanMm: 1.5 },
    { name: 'B', meanMm: 3 },
    { name: 'C', meanMm: 2.01 },
    { name: 'new', meanMm: 9 },
  ]
  expect(areaEffects(before, after, 0.1)).toEqual([
    { name: 'B', beforeMm: 5, afterMm: 3 },
    { name: 'A', beforeMm: 1, afterMm: 1.5 },
  ])
})
