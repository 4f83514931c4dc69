import { describe, expect, it } from 'vitest'
import { readingOf } from '../../../test/support/records.ts'
import type { NetworkSettings } from '../../ports/ledger.ts'
import { isComparable, lateAfterMs } from './readingWindow.ts'

const network: NetworkSettings = {
  id: 'n',
  name: 'Invented',
  timeZone: 'Europe/Rome',
  readingTime: '08:00',
  acceptWindowMin: 90,
  unit: 'mm',
  language: 'en',
  docketBelow: 0.5,
}

describe('the accept window', () => {
  it('ends so many minutes after the local reading hour, summer and winter', () => {
    expect(new Date(lateAfterMs(network, '2026-03-03')).toISOString()).toBe('2026-03-03T08:30:00.000Z')
    expect(new Date(lateAfterMs(network, '2026-07-03')).toISOString()).toBe('2026-07-03T07:30:00.000Z')
  })
})

describe('isComparable', () => {
  it('keeps a reading beside its neighbours up to six hours off, at either end', () => {
    const within = readingOf('r', 'a', '2026-03-03', 100, { endsAtUtc: '2026-03-03T12:59:00Z' })
    const beyond = readingOf('r', 'a', '2026-03-03', 100, { endsAtUtc: '2026-03-03T13:01:00Z' })
    const startedLate = readingOf('r', 'a', '2026-03-03', 100, { startsAtUtc: '2026-03-02T14:00:00Z' })
    expect([within, beyond, startedLate].map((reading) => isComparable(network, reading))).toEqual([true, false, false])
  })

  it('the day on which the clocks go forward is an hour short and still comparable', () => {
    const short = readingOf('r', 'a', '2026-03-29', 100, {
      startsAtUtc: '2026-03-28T07:00:00Z',
      endsAtUtc: '2026-03-29T06:00:00Z',
    })
    expect(isComparable(network, short)).toBe(true)
  })
})
