import { describe, expect, it } from 'vitest'
import { seededRandom } from '../stats/seededRandom.ts'
import { expectedLetThrough } from './expectedLetThrough.ts'
import { ruleCurve } from './ruleCurve.ts'
import { letStandAtOfRule, ruleName } from './ruleName.ts'
import { highestLetStandAt, lowestLetStandAt, ruleStepFrom, ruleSteps } from './ruleSteps.ts'

const random = seededRandom(8)
const readings = 900
const of = {
  pStands: Float64Array.from({ length: readings }, () => 1 - random() ** 4),
  morning: Int32Array.from({ length: readings }, (_, i) => Math.floor(i / 20)),
  morningCount: 50,
}

describe('ruleCurve', () => {
  it('says at each threshold what expectedLetThrough says of the same readings', () => {
    const thresholds = [0.99, 0.5, 0.9]
    const points = ruleCurve(of, thresholds)
    expect(points.map((point) => point.letStandAt)).toEqual([0.5, 0.9, 0.99])
    for (const point of points) {
      const alone = expectedLetThrough(of.pStands, point.letStandAt)
      expect([point.letStand, point.leftToPerson]).toEqual([alone.letStand, alone.leftToPerson])
      expect(point.expectedWrong).toBeCloseTo(alone.expectedWrong, 9)
      expect(point.year.expected).toBeCloseTo((alone.expectedWrong * 365) / 50, 9)
      expect(point.leftAMorning).toBeCloseTo(alone.leftToPerson / 50, 12)
    }
  })

  it('a stricter rule never lets more through and never leaves less to a person', () => {
    const points = ruleCurve(of, ruleSteps)
    for (let i = 1; i < points.length; i++) {
      const [looser, stricter] = [points[i - 1]!, points[i]!]
      expect(stricter.expectedWrong).toBeLessThanOrEqual(looser.expectedWrong)
      expect(stricter.leftToPerson).toBeGreaterThanOrEqual(looser.leftToPerson)
      expect(stricter.busyMorningLeft).toBeGreaterThanOrEqual(looser.busyMorningLeft)
    }
  })

  it('counts mornings without a reading, and knows a busy one: by hand, 9 mornings leave 1 and one leaves 5', () => {
    const pStands = new Float64Array(14).fill(0.4)
    const morning = Int32Array.from({ length: 14 }, (_, i) => Math.min(i, 9))
    const [point] = ruleCurve({ pStands, morning, morningCount: 20 }, [0.9])
    expect(point).toMatchObject({ letStand: 0, leftAMorning: 0.7, expectedWrong: 0 })
    // Ten zeros, nine ones and a five: P90 by type 7 is the value at place 17.1 of 0 to 19.
    expect(point!.busyMorningLeft).toBe(1)
  })
})

describe('ruleSteps', () => {
  it('rise from one end to the other, finer toward certainty', () => {
    expect(ruleSteps[0]).toBe(lowestLetStandAt)
    expect(ruleSteps.at(-1)).toBe(highestLetStandAt)
    for (let i = 1; i < ruleSteps.length; i++) expect(ruleSteps[i]!).toBeGreaterThan(ruleSteps[i - 1]!)
    for (const usual of [0.9, 0.95, 0.98, 0.99, 0.995]) expect(ruleSteps).toContain(usual)
  })

  it('ruleStepFrom never goes below what was wanted', () => {
    expect(ruleStepFrom(0.98)).toBe(0.98)
    expect(ruleStepFrom(0.98001)).toBe(0.981)
    expect(ruleStepFrom(0.99991)).toBeNull()
    expect(ruleStepFrom(0.01)).toBe(0.5)
  })
})

describe('ruleName', () => {
  it('carries the threshold there and back, and knows no other name', () => {
    for (const letStandAt of ruleSteps) expect(letStandAtOfRule(ruleName(letStandAt))).toBe(letStandAt)
    expect(ruleName(0.98)).toBe('let stand at 0.98')
    expect(letStandAtOfRule('let stand')).toBeNull()
    expect(letStandAtOfRule(ruleName(null))).toBeNull()
  })
})
