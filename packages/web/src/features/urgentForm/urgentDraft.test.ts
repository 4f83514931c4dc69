import { fileUrgentAskSchema } from '@gaugewright/contract'
import { describe, expect, it } from 'vitest'
import { makeFiling, mayMeasure, mpsPerUnit, type SeenOf, stoneByObject, stonesOutOfOrder } from './urgentDraft.ts'

const sender = { where: { kind: 'gauge', gaugeId: 'g-7' } as const, by: 'A. Observer' }
const now = '2026-06-09T16:40:00.000Z'
let count = 0
const newId = () => `0198c0de-0000-7000-8000-${String(++count).padStart(12, '0')}`
const hail = (changes: Partial<SeenOf<'hail'>> = {}): SeenOf<'hail'> => ({
  kind: 'hail',
  largest: stoneByObject('golf ball'),
  ...changes,
})

describe('a report', () => {
  it('of two taps, kind and size, is one that the desk takes', () => {
    const filing = makeFiling({ sender, seen: hail(), seenAtUtc: now }, newId, now)
    const read = fileUrgentAskSchema.parse(filing)
    // 1.75 in by the convention of warning offices.
    expect(read.seen).toMatchObject({ kind: 'hail', largest: { diameterMm: 44.45, by: 'object', object: 'golf ball' } })
    expect(read).toMatchObject({ updates: null, sentAtUtc: now, photoIds: [] })
  })

  it('that adds to another has an id of its own and names the first', () => {
    const first = makeFiling({ sender, seen: hail(), seenAtUtc: now }, newId, now)
    const more = makeFiling(
      { sender, seen: hail({ isGoingOn: false }), seenAtUtc: now, updates: first.id, remark: 'roof hit' },
      newId,
      now,
    )
    expect(more.id).not.toBe(first.id)
    expect(fileUrgentAskSchema.parse(more)).toMatchObject({ updates: first.id, remark: 'roof hit' })
  })

  it.each([
    [{ kind: 'rain', amountUm: 20_320, minutes: 15 }],
    [{ kind: 'flooding', things: ['street'] }],
    [{ kind: 'wind', damage: ['trees'] }],
    [{ kind: 'snow', depthMm: 38, minutes: 60 }],
  ] as const)('of %j is one that the desk takes', (seen) => {
    const filing = makeFiling({ sender, seen: structuredClone(seen) as never, seenAtUtc: now }, newId, now)
    expect(fileUrgentAskSchema.safeParse(filing).success).toBe(true)
  })
})

describe('measuring', () => {
  it('is asked for only when it is over and the last thunder is half an hour gone', () => {
    expect(mayMeasure(false, true)).toBe(true)
    expect(mayMeasure(false, false)).toBe(false)
    expect(mayMeasure(true, true)).toBe(false)
    expect(mayMeasure(null, true)).toBe(false)
    expect(mayMeasure(undefined, true)).toBe(false)
  })
})

describe('stones', () => {
  it('that contradict each other are named', () => {
    expect(stonesOutOfOrder(hail({ typical: stoneByObject('quarter'), smallest: stoneByObject('pea') }))).toEqual([])
    expect(stonesOutOfOrder(hail({ typical: stoneByObject('baseball') }))).toEqual(['typical'])
    expect(stonesOutOfOrder(hail({ typical: stoneByObject('pea'), smallest: stoneByObject('quarter') }))).toEqual([
      'smallest',
    ])
  })
})

it('58 mph, severe in the United States, is 25.9 m/s', () => {
  expect(58 * mpsPerUnit.mph).toBeCloseTo(25.93, 2)
  expect(90 * mpsPerUnit['km/h']).toBe(25)
})
