import type { RollRow } from '@gaugewright/contract'
import { describe, expect, it } from 'vitest'
import { countAnswers, filterRoll, sortRoll } from './rollView.ts'

function row(name: string, over: Partial<RollRow> = {}): RollRow {
  return {
    gaugeId: name,
    code: `C${name}`,
    name,
    area: 'Brennick',
    observerName: 'Ana Núñez',
    latDeg: 0,
    lonDeg: 0,
    elevationM: null,
    answer: 'read',
    readingId: name,
    amountUm: 100,
    isTrace: false,
    text: '0.1',
    spanDays: 1,
    endsAtUtc: null,
    standsOdds: 0.9,
    decision: null,
    acceptedUm: 100,
    ...over,
  }
}
const names = (rows: readonly RollRow[]) => rows.map((r) => r.name)
const rows = [
  row('Mill 10', { amountUm: 300 }),
  row('Mill 9', { amountUm: 0, isTrace: true }),
  row('Moor', {
    answer: 'silent',
    amountUm: null,
    readingId: null,
    acceptedUm: null,
    standsOdds: null,
    area: 'Aldermere',
  }),
  row('Dry', { amountUm: 0, answer: 'read late' }),
]

describe('filterRoll', () => {
  it('finds every word in name, code, county or observer, without case and accents', () => {
    expect(names(filterRoll(rows, 'all', 'nunez mill'))).toEqual(['Mill 10', 'Mill 9'])
    expect(names(filterRoll(rows, 'all', 'ALDER'))).toEqual(['Moor'])
    expect(names(filterRoll(rows, 'all', 'cdry'))).toEqual(['Dry'])
    expect(filterRoll(rows, 'all', 'mill moor')).toEqual([])
  })
  it('keeps one answer when asked', () => {
    expect(names(filterRoll(rows, 'silent', ''))).toEqual(['Moor'])
    expect(names(filterRoll(rows, 'read late', ''))).toEqual(['Dry'])
  })
})

describe('sortRoll', () => {
  it('orders amounts with a trace above dry, and gauges without a reading last either way', () => {
    expect(names(sortRoll(rows, { column: 'amount', descending: false }))).toEqual(['Dry', 'Mill 9', 'Mill 10', 'Moor'])
    expect(names(sortRoll(rows, { column: 'amount', descending: true }))).toEqual(['Mill 10', 'Mill 9', 'Dry', 'Moor'])
  })
  it('orders names as people count, 9 before 10, and silent answers first', () => {
    expect(names(sortRoll(rows, { column: 'name', descending: false }))).toEqual(['Dry', 'Mill 9', 'Mill 10', 'Moor'])
    expect(names(sortRoll(rows, { column: 'answer', descending: false }))[0]).toBe('Moor')
  })
  it('without an order keeps the roll as it is, in a new array', () => {
    const same = sortRoll(rows, null)
    expect(names(same)).toEqual(names(rows))
    expect(same).not.toBe(rows)
  })
})

it('countAnswers counts each answer once', () => {
  expect(countAnswers(rows)).toEqual({ all: 4, read: 2, 'read late': 1, 'multi-day open': 0, away: 0, silent: 1 })
})
