import { describe, expect, it } from 'vitest'
import { axisTicks, expectedShape, quantileAt, rootShare } from './expectedShape.ts'

const levels = [0.05, 0.1, 0.3, 0.5, 0.7, 0.9, 0.95]
const wet = [2, 3, 5, 7, 10, 16, 20]

describe('quantileAt', () => {
  it('reads straight between the levels and holds the ends', () => {
    expect(quantileAt(levels, wet, 0.2)).toBeCloseTo(4, 12)
    expect(quantileAt(levels, wet, 0.01)).toBe(2)
    expect(quantileAt(levels, wet, 0.99)).toBe(20)
    expect(quantileAt([], [], 0.5)).toBeNaN()
  })
})

describe('expectedShape', () => {
  it('has its tallest point inside the central 80 % and room for every mark', () => {
    const shape = expectedShape({ dryChance: 0, meanMm: 8, levels, mm: wet }, [80], 0.254)
    const top = shape.density.reduce((a, b) => (b.height > a.height ? b : a))
    expect(top.height).toBe(1)
    expect(top.mm).toBeGreaterThan(3)
    expect(top.mm).toBeLessThan(16)
    expect(shape.axisMaxMm).toBeGreaterThan(80)
    expect(shape).toMatchObject({ p10Mm: 3, p50Mm: 7, p90Mm: 16 })
  })
  it('draws no wet curve where all chance is dry', () => {
    const shape = expectedShape({ dryChance: 0.999, meanMm: 0, levels, mm: levels.map(() => 0) }, [0], 0.254)
    expect(shape.density).toEqual([])
    expect(shape.p90Mm).toBe(0)
    expect(shape.axisMaxMm).toBeCloseTo(2.54, 9)
  })
  it('leaves the dry levels out of the curve', () => {
    const shape = expectedShape({ dryChance: 0.5, meanMm: 4, levels, mm: [0, 0, 0, 0.2, 10, 16, 20] }, [0], 0.1)
    const near0 = shape.density.filter(({ mm }) => mm < 0.05).reduce((sum, { height }) => sum + height, 0)
    const near10 = shape.density.filter(({ mm }) => mm > 9 && mm < 12).reduce((sum, { height }) => sum + height, 0)
    expect(near10).toBeGreaterThan(near0)
  })
})

it('rootShare is 0 at 0, 1 at the end and half at a quarter', () => {
  expect([0, 5, 20].map((mm) => rootShare(mm, 20))).toEqual([0, 0.5, 1])
})

it('axisTicks are round, rising and not crowded', () => {
  expect(axisTicks(14)).toEqual([0, 0.5, 2, 5, 10])
  const ticks = axisTicks(0.3)
  expect(ticks[0]).toBe(0)
  expect(ticks.every((tick, i) => i === 0 || Math.sqrt(tick / 0.3) - Math.sqrt(ticks[i - 1]! / 0.3) >= 0.15)).toBe(true)
})
