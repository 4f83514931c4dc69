import { describe, expect, it } from 'vitest'
import { hailObjectMm } from './hailObjects.ts'
import { type UrgentObservation, usualThresholds } from './observation.ts'
import { weighSeverity } from './severity.ts'

const hail = (diameterMm: number, damage: string[] = []): UrgentObservation => ({
  kind: 'hail',
  largest: { diameterMm, by: 'ruler' },
  damage,
})
const levelOf = (seen: UrgentObservation) => weighSeverity(seen, usualThresholds).level

describe('hail against 1.00 in and 2.00 in', () => {
  it('is severe from a quarter on and significant from a hen egg on', () => {
    expect(levelOf(hail(hailObjectMm('nickel')))).toBe('near')
    expect(levelOf(hail(hailObjectMm('quarter')))).toBe('severe')
    expect(levelOf(hail(hailObjectMm('golf ball')))).toBe('severe')
    expect(levelOf(hail(hailObjectMm('hen egg')))).toBe('significant')
  })

  it('follows the thresholds that the office sets', () => {
    const twoCm = { ...usualThresholds, severeHailMm: 20, significantHailMm: 50 }
    expect(weighSeverity(hail(20), twoCm)).toEqual({
      level: 'severe',
      ratio: 1,
      basis: 'stone size',
      guidanceMinutes: null,
    })
    expect(weighSeverity(hail(50), twoCm).level).toBe('significant')
  })

  it('small hail that did damage is near, and counts for the damage', () => {
    expect(weighSeverity(hail(10, ['crops']), usualThresholds)).toMatchObject({ level: 'near', basis: 'damage' })
    expect(levelOf(hail(10))).toBe('below')
  })

  it('anybody hurt is significant whatever the size', () => {
    expect(levelOf(hail(10, ['people hurt']))).toBe('significant')
  })
})

it('a gust of 58 mph is severe, 65 kt of 50 significant, and damage without a speed severe', () => {
  const wind = (gustMps: number | null, damage: string[] = []): UrgentObservation => ({
    kind: 'wind',
    gustMps,
    by: 'measured',
    damage,
  })
  expect(levelOf(wind(58 * 0.44704))).toBe('severe') // 1 mph = 0.44704 m/s exactly
  expect(levelOf(wind(56 * 0.44704))).toBe('near')
  expect(levelOf(wind(25.93 * 1.3))).toBe('significant')
  expect(levelOf(wind(null, ['trees']))).toBe('severe')
  expect(weighSeverity(wind(null), usualThresholds)).toMatchObject({ level: 'below', ratio: null })
})

it('rain is held against guidance: an inch in the hour is at it, three quarters near it', () => {
  const rain = (amountUm: number): UrgentObservation => ({ kind: 'rain', amountUm, minutes: 60, damage: [] })
  expect(weighSeverity(rain(25_400), usualThresholds)).toMatchObject({ level: 'severe', ratio: 1, guidanceMinutes: 60 })
  expect(levelOf(rain(19_050))).toBe('near')
  expect(levelOf(rain(18_000))).toBe('below')
  expect(levelOf(rain(50_800))).toBe('significant')
})

it('snow at an inch an hour is severe', () => {
  expect(levelOf({ kind: 'snow', depthMm: 12.7, minutes: 30, damage: [] })).toBe('severe')
  expect(levelOf({ kind: 'snow', depthMm: 12.7, minutes: 60, damage: [] })).toBe('below')
})

it('water counts by where it is, how deep and how fast', () => {
  const water = (change: object): UrgentObservation => ({
    kind: 'flooding',
    things: ['street'],
    depth: 'ankle',
    isRising: null,
    isFast: null,
    damage: [],
    ...change,
  })
  expect(levelOf(water({}))).toBe('near')
  expect(levelOf(water({ isRising: true }))).toBe('severe')
  expect(levelOf(water({ things: ['stream'] }))).toBe('severe')
  expect(levelOf(water({ depth: 'waist' }))).toBe('significant')
  expect(levelOf(water({ isFast: true }))).toBe('significant')
})
