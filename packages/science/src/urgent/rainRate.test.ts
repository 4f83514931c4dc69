import { expect, it } from 'vitest'
import { againstGuidance, rateMmPerH } from './rainRate.ts'

const guidance = [
  { minutes: 60, amountUm: 30_000 },
  { minutes: 180, amountUm: 60_000 },
]

it('1.00 in over 20 minutes falls at 3 in an hour, 76.2 mm/h', () => {
  expect(rateMmPerH(25_400, 20)).toBeCloseTo(76.2, 10)
})

it('refuses an amount over no time', () => {
  expect(() => rateMmPerH(1000, 0)).toThrow('OUT_OF_DOMAIN')
  expect(() => againstGuidance(1000, -5, guidance)).toThrow('OUT_OF_DOMAIN')
  expect(() => againstGuidance(1000, 5, [])).toThrow('TOO_FEW_POINTS')
})

it('at a set duration the ratio is reported over set', () => {
  expect(againstGuidance(45_000, 60, guidance)).toEqual({ ratio: 1.5, minutes: 60, guidanceUm: 30_000 })
})

it('a shorter rain has fallen within every longer duration', () => {
  expect(againstGuidance(15_000, 10, guidance)).toEqual({ ratio: 0.5, minutes: 60, guidanceUm: 30_000 })
})

it('between two durations guidance is interpolated in logarithms: √(60·180) min needs √(30·60) mm', () => {
  const { minutes, guidanceUm } = againstGuidance(50_000, Math.sqrt(60 * 180), guidance)
  expect(minutes).toBeCloseTo(103.92, 2)
  expect(guidanceUm).toBeCloseTo(42_426.4, 1)
})

it('of a rain longer than all set durations some window held its share: 130 mm in 6 h, at least 65 in one half', () => {
  const { ratio, minutes } = againstGuidance(130_000, 360, guidance)
  expect(minutes).toBe(180)
  expect(ratio).toBeCloseTo(65 / 60, 10)
})

it('does not depend on the order of the durations', () => {
  expect(againstGuidance(33_000, 75, [...guidance].reverse())).toEqual(againstGuidance(33_000, 75, guidance))
})
