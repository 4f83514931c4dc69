import { expect, it } from 'vitest'
import { explanationsShown } from './explanationsShown.ts'

it('explanationsShown shows that a reading stands even where that has next to no odds, and leaves other such out', () => {
  const given = [
    { kind: 'stands', odds: 2e-7 },
    { kind: 'unit', odds: 0.009 },
    { kind: 'other', odds: 0.03 },
    { kind: 'decimal', odds: 0.96 },
  ] as const
  expect(explanationsShown(given).map(({ kind }) => kind)).toEqual(['decimal', 'other', 'stands'])
  expect(given[0].kind).toBe('stands')
})

it('explanationsShown shows the likeliest, however unlikely', () => {
  const given = [
    { kind: 'unit', odds: 0.004 },
    { kind: 'decimal', odds: 0.005 },
  ] as const
  expect(explanationsShown(given).map(({ kind }) => kind)).toEqual(['decimal'])
})
