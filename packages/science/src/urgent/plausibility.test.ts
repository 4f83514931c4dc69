import { describe, expect, it } from 'vitest'
import { occasionFactor } from './occasion.ts'
import { type OtherReport, plausibilityOf, type WitnessedReport } from './plausibility.ts'

// A June afternoon at 45° N, 11° E, in sun time about 16:45.
const seenAtMs = 1_813_075_200_000 // 2027-06-15T16:00Z
const stone = (change: Partial<WitnessedReport> = {}): WitnessedReport => ({
  kind: 'hail',
  latDeg: 45,
  lonDeg: 11,
  seenAtMs,
  magnitude: 44.45,
  by: 'object',
  witness: 'Ines',
  ...change,
})
const other = (distanceKm: number, minutes: number, change: Partial<OtherReport> = {}): OtherReport => ({
  ...stone({ witness: `${distanceKm}/${minutes}` }),
  seenAtMs: seenAtMs + 60_000 * minutes,
  distanceKm,
  ...change,
})

describe('plausibility', () => {
  it('odds of the three cases sum to 1, and without witnesses are the prior', () => {
    const alone = plausibilityOf(stone(), [], [])
    expect(alone.asTold + alone.smaller + alone.nothing).toBeCloseTo(1, 12)
    expect(alone.asTold).toBeCloseTo(alone.priorAsTold, 12)
    expect(alone).toMatchObject({ near: 0, inFavour: 0, nearestKm: null })
  })

  it('follows Bayes by hand: one witness of wind at the same place and time multiplies the odds of a storm by 9', () => {
    const alone = plausibilityOf(stone(), [], [])
    const heard = plausibilityOf(stone(), [other(0, 0, { kind: 'wind', magnitude: null })], [])
    const odds = ({ nothing }: { nothing: number }) => (1 - nothing) / nothing
    expect(odds(heard) / odds(alone)).toBeCloseTo(9, 8)
    expect(heard.asTold / heard.smaller).toBeCloseTo(alone.asTold / alone.smaller, 8)
  })

  it('a neighbour with stones alike makes it likelier, one with far smaller stones makes "smaller" likelier', () => {
    const alone = plausibilityOf(stone(), [], [])
    expect(plausibilityOf(stone(), [other(3, 4)], []).asTold).toBeGreaterThan(alone.asTold)
    const smaller = plausibilityOf(stone(), [other(3, 4, { magnitude: 13 })], [])
    expect(smaller.smaller).toBeGreaterThan(alone.smaller)
    expect(smaller.nothing).toBeLessThan(alone.nothing)
    expect([smaller.near, smaller.inFavour]).toEqual([1, 0])
  })

  it('nearer in space and in time says more; far away says nothing', () => {
    const at = (km: number, minutes: number) => plausibilityOf(stone(), [other(km, minutes)], []).nothing
    expect(at(2, 3)).toBeLessThan(at(10, 3))
    expect(at(2, 3)).toBeLessThan(at(2, 30))
    expect(plausibilityOf(stone(), [other(80, 3), other(2, 300)], []).near).toBe(0)
  })

  it('a person who reports three times is one witness, and none for the own report', () => {
    const thrice = [0, 1, 2].map((minutes) => other(2, minutes, { witness: 'Teo' }))
    expect(plausibilityOf(stone(), thrice, []).near).toBe(1)
    expect(plausibilityOf(stone(), [other(0, 1, { witness: 'Ines' })], []).near).toBe(0)
  })

  it('silence nearby speaks a little against it, and never much', () => {
    const alone = plausibilityOf(stone(), [], [])
    const quiet = plausibilityOf(stone(), [], [1, 2, 4, 30])
    expect(quiet.asTold).toBeLessThan(alone.asTold)
    expect(quiet.asTold).toBeGreaterThan(0.97 * alone.asTold)
  })

  it('a stone by ruler is believed more than one by object', () => {
    expect(plausibilityOf(stone({ by: 'ruler' }), [], []).asTold).toBeGreaterThan(
      plausibilityOf(stone(), [], []).asTold,
    )
  })
})

describe('occasion', () => {
  const june = seenAtMs
  const december = june + 183 * 86_400_000
  it('hail is usual on a June afternoon in the north and in December in the south', () => {
    expect(occasionFactor('hail', june, 45, 11)).toBeGreaterThan(5)
    expect(occasionFactor('hail', december, 45, 11)).toBeLessThan(1)
    expect(occasionFactor('hail', december, -45, 11)).toBeGreaterThan(5)
  })

  it('snow in summer is most unusual, and nearly impossible snow needs witnesses', () => {
    const snow = stone({ kind: 'snow', magnitude: 30, by: 'ruler' })
    expect(plausibilityOf(snow, [], []).nothing).toBeGreaterThan(0.3)
    expect(plausibilityOf({ ...snow, seenAtMs: december }, [], []).nothing).toBeLessThan(0.02)
    const witnesses = [other(2, 3, { kind: 'snow', magnitude: 30 }), other(4, 3, { kind: 'snow', magnitude: 30 })]
    expect(plausibilityOf(snow, witnesses, []).nothing).toBeLessThan(0.02)
  })
})
