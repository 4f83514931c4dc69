import { expect, it } from 'vitest'
import { urgentWeight } from './urgentWeight.ts'

const ask = { level: 'severe', ratio: 1.4, odds: 0.8, ageMinutes: 10, isGoingOn: true, passedOnLevel: null } as const

it('puts the graver, the likelier, the larger and the newer first', () => {
  const weight = urgentWeight(ask)
  expect(urgentWeight({ ...ask, level: 'significant' })).toBeGreaterThan(weight)
  expect(urgentWeight({ ...ask, odds: 0.9 })).toBeGreaterThan(weight)
  expect(urgentWeight({ ...ask, ratio: 1.9 })).toBeGreaterThan(weight)
  expect(urgentWeight({ ...ask, ageMinutes: 40 })).toBeLessThan(weight)
  expect(urgentWeight({ ...ask, isGoingOn: false })).toBeLessThan(weight)
})

it('counts less where the storm was passed on at this level, and in full where only a lesser one was', () => {
  expect(urgentWeight({ ...ask, passedOnLevel: 'severe' })).toBeCloseTo(0.35 * urgentWeight(ask), 12)
  expect(urgentWeight({ ...ask, passedOnLevel: 'near' })).toBe(urgentWeight(ask))
})

it('a sender whose clock runs ahead gains nothing', () => {
  expect(urgentWeight({ ...ask, ageMinutes: -30 })).toBe(urgentWeight({ ...ask, ageMinutes: 0 }))
})
