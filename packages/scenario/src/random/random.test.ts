import { describe, expect, it } from 'vitest'
import { gradientNoise, ridged } from './gradientNoise.ts'
import { Random } from './random.ts'
import { smoothField } from './smoothField.ts'

describe('Random', () => {
  it('the same seed and stream give the same numbers; another stream or seed gives others', () => {
    const draw = (seed: number, stream: string) => {
      const random = new Random(seed, stream)
      return Array.from({ length: 5 }, () => random.next())
    }
    expect(draw(7, 'weather')).toEqual(draw(7, 'weather'))
    expect(draw(7, 'weather')).not.toEqual(draw(7, 'people'))
    expect(draw(7, 'weather')).not.toEqual(draw(8, 'weather'))
  })

  it('uniform, normal and Poisson numbers have their means and variances', () => {
    const random = new Random(11, 'moments')
    const count = 20_000
    const moments = (draw: () => number) => {
      const values = Array.from({ length: count }, draw)
      const mean = values.reduce((sum, value) => sum + value, 0) / count
      return { mean, variance: values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / count }
    }
    const uniform = moments(() => random.next())
    expect(uniform.mean).toBeCloseTo(1 / 2, 1)
    expect(uniform.variance).toBeCloseTo(1 / 12, 2)
    const normal = moments(() => random.normal())
    expect(Math.abs(normal.mean)).toBeLessThan(0.03)
    expect(Math.abs(normal.variance - 1)).toBeLessThan(0.05)
    const poisson = moments(() => random.poisson(2.5))
    expect(Math.abs(poisson.mean - 2.5)).toBeLessThan(0.06)
    expect(Math.abs(poisson.variance - 2.5)).toBeLessThan(0.15)
  })

  it('weighted never draws an index of weight 0 and follows the others', () => {
    const random = new Random(3, 'weights')
    const counts = [0, 0, 0]
    for (let draw = 0; draw < 9000; draw++) counts[random.weighted([2, 0, 1])]!++
    expect(counts[1]).toBe(0)
    expect(Math.abs(counts[0]! / 9000 - 2 / 3)).toBeLessThan(0.02)
  })

  it('shuffled keeps every item and leaves its input alone', () => {
    const items = [5, 9, 2, 7, 1]
    const mixed = new Random(4, 'shuffle').shuffled(items)
    expect(items).toEqual([5, 9, 2, 7, 1])
    expect([...mixed].sort()).toEqual([1, 2, 5, 7, 9])
  })
})

describe('smoothField', () => {
  it('has mean 0, variance 1 and a correlation that falls with distance, over many fields', () => {
    const random = new Random(21, 'fields')
    const at = [0, 10, 40, 160]
    const count = 3000
    const sums = at.map(() => 0)
    let mean = 0
    for (let field = 0; field < count; field++) {
      const value = smoothField(random, 40)
      const here = value(3, -8)
      mean += here / count
      at.forEach((distance, index) => {
        sums[index] = sums[index]! + (here * value(3 + distance * 0.6, -8 + distance * 0.8)) / count
      })
    }
    expect(Math.abs(mean)).toBeLessThan(0.06)
    expect(Math.abs(sums[0]! - 1)).toBeLessThan(0.06)
    expect(sums[1]).toBeGreaterThan(0.7)
    expect(sums[2]).toBeGreaterThan(0.25)
    expect(sums[2]).toBeLessThan(0.55)
    expect(Math.abs(sums[3]!)).toBeLessThan(0.12)
  })
})

describe('gradientNoise', () => {
  it('changes little over a hundredth of a unit and stays between -1.1 and 1.1', () => {
    const noise = gradientNoise(new Random(5, 'noise'))
    for (let index = 0; index < 500; index++) {
      const x = index * 0.37 - 90
      const y = index * 0.53 - 70
      expect(Math.abs(noise(x, y))).toBeLessThan(1.1)
      expect(Math.abs(noise(x + 0.01, y) - noise(x, y))).toBeLessThan(0.05)
    }
  })

  it('ridged noise lies between 0 and 1', () => {
    const crest = ridged(gradientNoise(new Random(6, 'noise')), 3)
    for (let index = 0; index < 300; index++) {
      expect(crest(index * 0.31, index * -0.17)).toBeGreaterThanOrEqual(0)
      expect(crest(index * 0.31, index * -0.17)).toBeLessThanOrEqual(1)
    }
  })
})
