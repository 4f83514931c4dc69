/**
 * Random numbers that are the same on every machine for the same seed: xoshiro128** with its state filled by
 * splitmix32. Source: [Blackman2021] (xoshiro); normal deviates by the polar method, [Marsaglia1964].
 */

/**
 * @param seed  any number; its 32 low bits count
 * @returns a function giving evenly spread numbers in [0, 1), 32 bits fine
 */
export function seededRandom(seed: number): () => number {
  let fill = seed | 0
  const next = (): number => {
    fill = (fill + 0x9e3779b9) | 0
    let t = fill ^ (fill >>> 16)
    t = Math.imul(t, 0x21f0aaad)
    t ^= t >>> 15
    t = Math.imul(t, 0x735a2d97)
    return t ^ (t >>> 15)
  }
  return xoshiro128(next(), next(), next(), next())
}

/** The bare generator from four words of state, not all zero. */
export function xoshiro128(s0: number, s1: number, s2: number, s3: number): () => number {
  let a = s0 | 0
  let b = s1 | 0
  let c = s2 | 0
  let d = s3 | 0
  return () => {
    const scrambled = Math.imul(b, 5)
    const result = Math.imul((scrambled << 7) | (scrambled >>> 25), 9)
    const t = b << 9
    c ^= a
    d ^= b
    b ^= c
    a ^= d
    c ^= t
    d = (d << 11) | (d >>> 21)
    return (result >>> 0) / 4294967296
  }
}

/** Standard normal deviates out of even ones. */
export function normalDeviates(random: () => number): () => number {
  let spare = Number.NaN
  return () => {
    if (!Number.isNaN(spare)) {
      const value = spare
      spare = Number.NaN
      return value
    }
    for (;;) {
      const u = 2 * random() - 1
      const v = 2 * random() - 1
      const s = u * u + v * v
      if (s > 0 && s < 1) {
        const factor = Math.sqrt((-2 * Math.log(s)) / s)
        spare = v * factor
        return u * factor
      }
    }
  }
}
