import type { RulePoint } from '@gaugewright/contract'
import { describe, expect, it } from 'vitest'
import {
  countPlaces,
  isShort,
  isYoung,
  labelledPlaces,
  leftShare,
  parseOdds,
  placeAtX,
  placeForYear,
  placeOf,
  rootTicks,
  rulePlotShape,
} from './ruleView.ts'

function point(letStandAt: number, leftToPerson: number, expected: number): RulePoint {
  const forecast = { expected, low: Math.floor(expected / 2), high: Math.ceil(expected * 1.5) }
  return {
    letStandAt,
    letStand: 1000 - leftToPerson,
    leftToPerson,
    expectedWrong: expected,
    leftAMorning: leftToPerson / 10,
    busyMorningLeft: leftToPerson / 4,
    month: forecast,
    year: forecast,
  }
}
const points = [
  point(0.5, 8, 230),
  point(0.9, 20, 95),
  point(0.98, 40, 50),
  point(0.999, 300, 7),
  point(0.9999, 590, 0.9),
]
const frame = { widthPx: 600, heightPx: 300, leftPx: 50, rightPx: 10, topPx: 10, bottomPx: 40 }

describe('parseOdds', () => {
  it('reads odds as people write them, in both languages, and as a percentage', () => {
    for (const text of ['0.98', '.98', ' 0,98 ', '98 %', '98%', '98']) expect(parseOdds(text), text).toBe(0.98)
    expect(parseOdds('99.76 %')).toBe(0.9976)
    expect(parseOdds('0.98765')).toBe(0.9877)
  })
  it('is null where it is no threshold: too loose, certain, words, nothing, two marks', () => {
    for (const text of ['0.49', '1', '100', '0', 'high', '', '0.9.8', '-0.9']) expect(parseOdds(text), text).toBeNull()
  })
})

describe('the point that is meant', () => {
  it('placeOf takes the nearest threshold', () => {
    expect(placeOf(points, 0.98)).toBe(2)
    expect(placeOf(points, 0.9985)).toBe(3)
    expect(placeOf(points, 0.51)).toBe(0)
    expect(placeOf([], 0.9)).toBe(-1)
  })
  it('placeForYear takes the loosest rule that keeps to the wish', () => {
    expect(placeForYear(points, 50)).toBe(2)
    expect(placeForYear(points, 49.9)).toBe(3)
    expect(placeForYear(points, 1000)).toBe(0)
    expect(placeForYear(points, 0.5)).toBeNull()
  })
  it('placeAtX takes the point drawn nearest', () => {
    const { places } = rulePlotShape(points, frame)
    expect(placeAtX(places, places[3]!.x + 4)).toBe(3)
    expect(placeAtX(places, -50)).toBe(0)
  })
})

describe('rulePlotShape', () => {
  const { places, xTicks, yTicks } = rulePlotShape(points, frame)
  it('a stricter rule lies further right and lower, within the frame', () => {
    for (let i = 1; i < places.length; i += 1) {
      expect(places[i]!.x).toBeGreaterThan(places[i - 1]!.x)
      expect(places[i]!.y).toBeGreaterThan(places[i - 1]!.y)
    }
    for (const { high, low, x, y } of places) {
      expect(x).toBeGreaterThanOrEqual(frame.leftPx)
      expect(x).toBeLessThanOrEqual(frame.widthPx - frame.rightPx)
      expect(high).toBeGreaterThanOrEqual(frame.topPx)
      expect(low).toBeLessThanOrEqual(frame.heightPx - frame.bottomPx)
      expect(y).toBeGreaterThanOrEqual(high)
      expect(y).toBeLessThanOrEqual(low)
    }
  })
  it('ticks are round and lie where their value is: 4 % of the readings at the third point', () => {
    const share = leftShare(points[2]!)
    expect(share).toBeCloseTo(0.04, 12)
    const scale = (places[2]!.x - frame.leftPx) / Math.sqrt(0.04)
    for (const { value, x } of xTicks) expect(x).toBeCloseTo(frame.leftPx + scale * Math.sqrt(value / 100), 6)
    expect(yTicks[0]).toEqual({ value: 0, y: 260 })
  })
  it('rootTicks rise, are round, and keep apart', () => {
    expect(rootTicks(58, 9)).toEqual([0, 1, 5, 10, 20, 50])
    expect(rootTicks(0.3, 3)).toEqual([0, 0.1])
  })
  it('labelledPlaces never label two points that lie on each other', () => {
    const kept = labelledPlaces(points, places, 30)
    expect(kept).toContain(2)
    for (const one of kept)
      for (const other of kept)
        if (one !== other)
          expect(
            Math.hypot(places[one]!.x - places[other]!.x, places[one]!.y - places[other]!.y),
          ).toBeGreaterThanOrEqual(30)
  })
})

it('says of a preview whether seasons are missing, and whether the record is young', () => {
  expect([isShort({ mornings: 365 }), isShort({ mornings: 90 })]).toEqual([false, true])
  expect([isYoung({ recordDays: 60 }), isYoung({ recordDays: 59 })]).toEqual([false, true])
})

it('countPlaces: a few are told to a tenth, many as whole numbers', () => {
  expect([countPlaces(0.42), countPlaces(9.9), countPlaces(9.96), countPlaces(240)]).toEqual([1, 1, 0, 0])
})
