import { describe, expect, it } from 'vitest'
import type { KeptUrgent } from '../../api/urgentForm/keptUrgent.ts'
import { reportsOnPhone } from './reportsOnPhone.ts'

const filing = (seq: number, reportId: string, changes: object = {}): KeptUrgent =>
  ({
    what: 'filing',
    seq,
    reportId,
    filing: { id: `f${seq}` },
    madeAtUtc: `2026-06-09T16:0${seq}:00.000Z`,
    state: 'waiting',
    receivedAtUtc: null,
    problem: null,
    ...changes,
  }) as KeptUrgent
const received = { state: 'received', receivedAtUtc: '2026-06-09T17:00:00.000Z' }

describe('reports on the phone', () => {
  it('are told one by one, newest first, each by its newest filing', () => {
    const shown = reportsOnPhone([filing(3, 'a'), filing(1, 'a', received), filing(2, 'b', received)])
    expect(shown.map(({ reportId }) => reportId)).toEqual(['b', 'a'])
    expect(shown[1]?.filing.id).toBe('f3')
  })
  it('count as received only once every filing is', () => {
    expect(reportsOnPhone([filing(1, 'a', received), filing(2, 'a')])[0]?.state).toBe('waiting')
    expect(reportsOnPhone([filing(1, 'a', received), filing(2, 'a', received)])[0]?.state).toBe('received')
  })
  it('tell of a filing that was refused, whatever came after', () => {
    const problem = { code: 'ASK_NOT_VALID', seen: 'x', advice: 'y' }
    const shown = reportsOnPhone([filing(1, 'a', { state: 'refused', problem }), filing(2, 'a', received)])
    expect(shown[0]).toMatchObject({ state: 'refused', problem })
  })
  it('have their own photos', () => {
    const photo = { ...filing(4, 'a'), what: 'photo' } as unknown as KeptUrgent
    const shown = reportsOnPhone([filing(1, 'a'), filing(2, 'b'), photo])
    expect(shown.map(({ reportId, photos }) => [reportId, photos.length])).toEqual([
      ['b', 0],
      ['a', 1],
    ])
  })
})
