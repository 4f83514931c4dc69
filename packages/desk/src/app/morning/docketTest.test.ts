import { expect, it } from 'vitest'
import { decisionOf } from '../../../test/support/records.ts'
import { docketTest } from './docketTest.ts'

const ruled = decisionOf('1', 'r1', 'stands', null, { by: { kind: 'rule', rule: 'let stand at 0.98' } })
const sure = { standsOdds: 0.99, canTell: true }

it('by odds: below the measure of the docket, where something can be told', () => {
  const isForDocket = docketTest({ decisions: [], docketBelow: 0.98 })
  expect(isForDocket('r1', { standsOdds: 0.9799, canTell: true })).toBe(true)
  expect(isForDocket('r1', { standsOdds: 0.98, canTell: true })).toBe(false)
  expect(isForDocket('r1', { standsOdds: 0.9, canTell: false })).toBe(false)
})

it('whatever its odds where a person took back what the rule decided; not where the rule did so itself', () => {
  const by = (back: ReturnType<typeof decisionOf>) => docketTest({ decisions: [ruled, back], docketBelow: 0.98 })
  expect(by(decisionOf('2', 'r1', 'stands', null, { undoes: '1' }))('r1', sure)).toBe(true)
  expect(by(decisionOf('2', 'r1', 'stands', null, { undoes: '1', by: ruled.by }))('r1', sure)).toBe(false)
  expect(by(decisionOf('2', 'r2', 'stands', null, { undoes: '9' }))('r2', sure)).toBe(false)
})
