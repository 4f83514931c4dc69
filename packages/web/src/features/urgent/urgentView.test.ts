import { fileUrgentAskSchema, type UrgentItem, type UrgentSeen } from '@gaugewright/contract'
import { describe, expect, it } from 'vitest'
import { withItem } from '../../api/urgent.ts'
import { makeFormat } from '../../words/format.ts'
import { messages } from '../../words/messages.ts'
import { agoText, lastUndoable, oddsText, placeText, stepFrom, stretchText, whatText } from './urgentView.ts'

const inches = { words: messages.en, format: makeFormat(messages.en, 'en', 'in', 'UTC') }
const metric = { words: messages.es, format: makeFormat(messages.es, 'es', 'mm', 'UTC') }

const seenOf = (seen: object): UrgentSeen =>
  fileUrgentAskSchema.parse({
    id: '00000000-0000-4000-8000-000000000001',
    where: { kind: 'place', latDeg: 1, lonDeg: 2, name: null },
    seenAtUtc: '2026-05-31T08:20:00Z',
    by: 'A',
    seen,
  }).seen

describe('whatText', () => {
  it('hail: the size in the unit of the network, and the object that was named', () => {
    const golf = seenOf({ kind: 'hail', largest: { diameterMm: 44.45, by: 'object', object: 'golf ball' } })
    expect(whatText(golf, inches)).toBe('Hail 1.75 in, as a golf ball')
    expect(whatText(golf, metric)).toBe('Granizo 44 mm, como una pelota de golf')
    expect(whatText(seenOf({ kind: 'hail', largest: { diameterMm: 25.4, by: 'ruler' } }), inches)).toBe('Hail 1.00 in')
  })

  it('rain and snow over their minutes, a gust in the speed that people drive by, water by where and how', () => {
    expect(whatText(seenOf({ kind: 'rain', amountUm: 25_400, minutes: 20 }), inches)).toBe('Rain 1.00 in in 20 min')
    expect(whatText(seenOf({ kind: 'snow', depthMm: 60, minutes: 90 }), metric)).toBe('Nieve 60,0 mm en 90 min')
    // 58 mph = 25.93 m/s = 93 km/h
    expect(whatText(seenOf({ kind: 'wind', gustMps: 25.93, by: 'measured' }), inches)).toBe('Wind, gust 58 mph')
    expect(whatText(seenOf({ kind: 'wind', gustMps: 25.93, by: 'measured' }), metric)).toBe('Viento, racha 93 km/h')
    expect(whatText(seenOf({ kind: 'wind', damage: ['trees'] }), inches)).toBe('Wind: damage')
    expect(whatText(seenOf({ kind: 'flooding', things: ['stream'], depth: 'knee', isRising: true }), inches)).toBe(
      'Flooding: stream, knee-deep, rising',
    )
  })
})

it('stretches of time: seconds, minutes, hours, and what is not yet', () => {
  expect([41.6, 185, 7800, null].map((seconds) => stretchText(seconds, inches))).toEqual([
    '42 s',
    '3 min 5 s',
    '2 h 10 min',
    'not yet',
  ])
})

it('ages from now to days, and none below zero where clocks differ', () => {
  const from = '2026-05-31T08:00:00Z'
  const at = (minutes: number) => agoText(from, Date.parse(from) + 60_000 * minutes, inches)
  expect([-3, 0.5, 7, 61, 60 * 49].map(at)).toEqual(['just now', 'just now', '7 min ago', '1 h ago', '2 days ago'])
})

const item = (id: string, weight: number, change: object = {}): UrgentItem =>
  ({
    report: { id, where: { kind: 'place', name: 'Meadow' } },
    gauge: null,
    state: 'new',
    seenBy: [],
    passedOn: [],
    closed: null,
    weight,
    plausibility: { odds: 0.9, priorOdds: 0.75, near: 3, inFavour: 2, nearestKm: 4.2 },
    ...change,
  }) as unknown as UrgentItem

it('the odds name the neighbours that bear on them, or say that there are none', () => {
  expect(oddsText(item('a', 1), metric)).toContain('2 de 3 avisos cercanos')
  expect(oddsText(item('a', 1), metric)).toContain('4,2 km')
  const alone = { odds: 0.8, priorOdds: 0.8, near: 0, inFavour: 0, nearestKm: null }
  expect(oddsText(item('a', 1, { plausibility: alone }), inches)).toBe('80 %; nobody near has told anything yet')
})

it('a place is its gauge, else what people call it, else it has no name', () => {
  expect(placeText(item('a', 1, { gauge: { name: 'Mill', code: 'N1' } }), inches)).toBe('Mill (N1)')
  expect(placeText(item('a', 1), inches)).toBe('Meadow')
  expect(placeText(item('a', 1, { report: { where: { kind: 'place', name: null } } }), inches)).toBe(
    'a place without a name',
  )
})

it('what can be taken back is the last thing done, but nothing that has gone out', () => {
  const seenBy = [{ eventId: 'e1' }]
  expect(lastUndoable(item('a', 1))).toBeNull()
  expect(lastUndoable(item('a', 1, { seenBy }))).toBe('e1')
  expect(lastUndoable(item('a', 1, { seenBy, passedOn: [{ eventId: 'e2', way: 'copied' }] }))).toBe('e2')
  expect(lastUndoable(item('a', 1, { seenBy, passedOn: [{ eventId: 'e2', way: 'mail' }] }))).toBeNull()
  expect(lastUndoable(item('a', 1, { seenBy, closed: { eventId: 'e3' } }))).toBe('e3')
})

it('steps through the list and stops at its ends', () => {
  const items = [item('a', 3), item('b', 2), item('c', 1)]
  expect(stepFrom(items, null, 1)).toBe('a')
  expect(stepFrom(items, 'a', 1)).toBe('b')
  expect(stepFrom(items, 'c', 1)).toBe('c')
  expect(stepFrom(items, 'a', -1)).toBe('a')
  expect(stepFrom([], 'a', 1)).toBeNull()
})

it('a live report takes its place by weight, before the closed ones, once', () => {
  const now = { items: [item('a', 9), item('b', 2), item('z', 50, { state: 'closed' })], newCount: 2, lastEvent: 3 }
  const ids = (next: { items: UrgentItem[] }) => next.items.map(({ report }) => report.id)
  const next = withItem(now as never, item('n', 5), 4)
  expect(ids(next)).toEqual(['a', 'n', 'b', 'z'])
  expect([next.newCount, next.lastEvent]).toEqual([3, 4])
  expect(ids(withItem(next, item('n', 1), 5))).toEqual(['a', 'b', 'n', 'z'])
})
