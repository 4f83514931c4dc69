/**
 * Seeded random numbers: one independent stream for each part of the scenario, so that a change in one part (a new
 * storm type) leaves the others (terrain, people) as they were. Generator: sfc32 [DotyHumphrey2010]; normal
 * numbers by [Marsaglia1964]; not for secrets.
 */
export class Random {
  private a: number
  private b: number
  private c: number
  private counter = 1
  private spareNormal = Number.NaN

  /** @param seed any number; @param stream name of the part that draws, e.g. `weather` */
  constructor(seed: number, stream: string) {
    this.a = hash(`${seed}/${stream}/a`)
    this.b = hash(`${seed}/${stream}/b`)
    this.c = hash(`${seed}/${stream}/c`)
    for (let warmUp = 0; warmUp < 12; warmUp++) this.next()
  }

  /** Uniform in [0, 1). */
  next(): number {
    const sum = (((this.a + this.b) | 0) + this.counter) | 0
    this.counter = (this.counter + 1) | 0
    this.a = this.b ^ (this.b >>> 9)
    this.b = (this.c + (this.c << 3)) | 0
    this.c = ((this.c << 21) | (this.c >>> 11)) + sum
    this.c |= 0
    return (sum >>> 0) / 4_294_967_296
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.next()
  }

  /** Whole number from 0 to count - 1. */
  below(count: number): number {
    return Math.floor(this.next() * count)
  }

  chance(probability: number): boolean {
    return this.next() < probability
  }

  /** Standard normal (polar method). */
  normal(): number {
    if (!Number.isNaN(this.spareNormal)) {
      const spare = this.spareNormal
      this.spareNormal = Number.NaN
      return spare
    }
    for (;;) {
      const u = 2 * this.next() - 1
      const v = 2 * this.next() - 1
      const radius2 = u * u + v * v
      if (radius2 >= 1 || radius2 === 0) continue
      const scale = Math.sqrt((-2 * Math.log(radius2)) / radius2)
      this.spareNormal = v * scale
      return u * scale
    }
  }

  /** Median 1 × `median`, spread `sigma` in natural logs. */
  logNormal(median: number, sigma: number): number {
    return median * Math.exp(sigma * this.normal())
  }

  exponential(mean: number): number {
    return -mean * Math.log(1 - this.next())
  }

  /** Poisson count, for small means. */
  poisson(mean: number): number {
    const limit = Math.exp(-mean)
    let product = this.next()
    let count = 0
    while (product > limit) {
      product *= this.next()
      count++
    }
    return count
  }

  pick<T>(items: readonly T[]): T {
    return items[this.below(items.length)]!
  }

  /** Index drawn in proportion to the weights (not all 0). */
  weighted(weights: ArrayLike<number>): number {
    let total = 0
    for (let index = 0; index < weights.length; index++) total += weights[index]!
    let left = this.next() * total
    for (let index = 0; index < weights.length; index++) {
      left -= weights[index]!
      if (left < 0) return index
    }
    return weights.length - 1
  }

  shuffled<T>(items: readonly T[]): T[] {
    const result = [...items]
    for (let index = result.length - 1; index > 0; index--) {
      const other = this.below(index + 1)
      const held = result[index]!
      result[index] = result[other]!
      result[other] = held
    }
    return result
  }
}

/** 32-bit FNV-1a of a text, with a final mixing. */
function hash(text: string): number {
  let value = 0x811c9dc5
  for (let index = 0; index < text.length; index++) {
    value ^= text.charCodeAt(index)
    value = Math.imul(value, 0x01000193)
  }
  value ^= value >>> 16
  value = Math.imul(value, 0x85ebca6b)
  value ^= value >>> 13
  return value | 0
}
