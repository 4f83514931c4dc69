import { describe, expect, it } from 'vitest'
import { draftFrom, seenOf, troubleWith } from './moreDraft.ts'
import { type SeenOf, stoneByObject } from './urgentDraft.ts'

const nowMs = new Date(2026, 5, 9, 17, 0).getTime()
const hail: SeenOf<'hail'> = { kind: 'hail', largest: stoneByObject('golf ball') }
const at = (hours: number, minutes: number) => new Date(2026, 5, 9, hours, minutes).toISOString()

describe('more about a report', () => {
  it('starts from what was filed last, and filed unchanged says the same', () => {
    const filed = { ...hail, beganAtUtc: at(16, 20), endedAtUtc: at(16, 31), isGoingOn: false }
    const draft = draftFrom({ seen: filed, remark: 'loud' })
    expect(draft).toMatchObject({ began: '16:20', ended: '16:31', remark: 'loud' })
    expect(seenOf(draft, nowMs)).toEqual(filed)
  })

  it('has no end while it goes on, even where one was typed before', () => {
    const draft = { ...draftFrom({ seen: { ...hail, isGoingOn: true } }), began: '16:20', ended: '16:31' }
    expect(seenOf(draft, nowMs)).toMatchObject({ beganAtUtc: at(16, 20), endedAtUtc: null })
  })

  it('is not sent while it contradicts itself', () => {
    const draft = draftFrom({ seen: hail })
    expect(troubleWith(draft, nowMs)).toBeNull()
    expect(troubleWith({ ...draft, began: '16:40', ended: '16:30' }, nowMs)).toBe('ends early')
    expect(troubleWith({ ...draft, seen: { ...hail, typical: stoneByObject('softball') } }, nowMs)).toBe('stones')
  })

  it('over midnight ends after it began', () => {
    const afterMidnight = new Date(2026, 5, 10, 0, 20).getTime()
    expect(troubleWith({ ...draftFrom({ seen: hail }), began: '23:50', ended: '00:05' }, afterMidnight)).toBeNull()
  })
})
