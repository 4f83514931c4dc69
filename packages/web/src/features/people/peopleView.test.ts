import type { Candidate, ObserverRow, PeopleDesk } from '@gaugewright/contract'
import { describe, expect, it } from 'vitest'
import { foundObservers, foundOffers, keyOf } from './peopleView.ts'

const candidate = (id: string, name: string, state: Candidate['state'], sinceUtc: string): Candidate =>
  ({ id, offer: { name, place: `place of ${id}` }, state, sinceUtc, gauge: null }) as Candidate
const observer = (code: string, name: string): ObserverRow => ({ code, name, gaugeName: `at ${code}` }) as ObserverRow
const desk = {
  candidates: [
    candidate('c', 'Joaquín', 'answered', '2026-05-02T00:00:00Z'),
    candidate('a', 'Mei', 'offered', '2026-05-09T00:00:00Z'),
    candidate('b', 'Olu', 'offered', '2026-05-03T00:00:00Z'),
  ],
  observers: [observer('A1B2C', 'Inês'), observer('D4E5F', 'Hugo')],
} as PeopleDesk

describe('the lists of People', () => {
  it('show offers in the order of the way, who has waited longest first', () => {
    expect(foundOffers(desk, '').map(({ id }) => id)).toEqual(['b', 'a', 'c'])
  })
  it('find a name without its accents, a place and a code', () => {
    expect(foundOffers(desk, 'joaquin').map(({ id }) => id)).toEqual(['c'])
    expect(foundOffers(desk, 'place of a').map(({ id }) => id)).toEqual(['a'])
    expect(foundObservers(desk, 'INES').map(({ code }) => code)).toEqual(['A1B2C'])
    expect(foundObservers(desk, 'd4e').map(({ name }) => name)).toEqual(['Hugo'])
    expect(foundObservers(desk, 'nobody')).toEqual([])
  })
  it('name each in the address', () => {
    expect([keyOf(desk.candidates[0]!), keyOf(desk.observers[1]!)]).toEqual(['offers/c', 'observers/D4E5F'])
  })
})
