import { epochDayFromIso, isoFromEpochDay, type Reading } from '@gaugewright/science'
import { expect, it } from 'vitest'
import { arrangementNotes } from './arrangementNotes.ts'
import type { Morning } from './loadMorning.ts'

function reading(id: string, gaugeId: string, firstDay: string, lastDay: string, amountUm: number): Reading {
  const kind = firstDay === lastDay ? 'daily' : 'multiday'
  const base = { text: '', unit: 'mm', remark: null, receivedAtUtc: '', door: 'import', supersedes: null } as const
  const startsAtUtc = `${isoFromEpochDay(epochDayFromIso(firstDay) - 1)}T06:00:00Z`
  return {
    ...base,
    id,
    gaugeId,
    kind,
    firstDay,
    lastDay,
    startsAtUtc,
    endsAtUtc: `${lastDay}T06:00:00Z`,
    amountUm,
    isTrace: false,
  }
}

const days = ['10', '11', '12', '13', '14', '15', '16', '17'].map((day) => `2026-03-${day}`)

function morningOf(readings: Reading[]): Morning {
  const network = { unit: 'mm', language: 'en' } as Morning['network']
  const range = { firstDay: '2026-01-01', lastDay: '2026-03-17' } as Morning['range']
  return { network, range, readings, day: '2026-03-17', epochDay: epochDayFromIso('2026-03-17') } as unknown as Morning
}

it('says nothing of a gauge that was read each day, and names the day on which another was silent', () => {
  const all = days.map((day) => reading(`a${day}`, 'a', day, day, 1000))
  const some = days.filter((day) => day !== '2026-03-13').map((day) => reading(`b${day}`, 'b', day, day, 2000))
  const morning = morningOf([...all, ...some])
  expect(arrangementNotes(morning, 'a')).toEqual([])
  const notes = arrangementNotes(morning, 'b')
  expect(notes).toHaveLength(1)
  expect(notes[0]).toContain('13')
})

it('tells a total over days, and a total that holds a reading of its own days', () => {
  const before = days.slice(0, 5).map((day) => reading(`a${day}`, 'a', day, day, 1000))
  const total = reading('t', 'a', '2026-03-15', '2026-03-17', 9000)
  expect(arrangementNotes(morningOf([...before, total]), 'a')).toHaveLength(1)
  const inside = reading('i', 'a', '2026-03-16', '2026-03-16', 4000)
  expect(arrangementNotes(morningOf([...before, total, inside]), 'a').join(' ')).not.toBe('')
  expect(arrangementNotes(morningOf([...before, total, inside]), 'a')).not.toEqual(
    arrangementNotes(morningOf([...before, total]), 'a'),
  )
})
