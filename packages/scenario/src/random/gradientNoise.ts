/** Gradient noise and its fractal sums, for terrain. Values lie within about -1 to 1. Source: [Perlin2002]. */
import type { Random } from './random.ts'

export type Noise = (x: number, y: number) => number

const LATTICE = 256

/** Smooth noise with features about 1 unit across. */
export function gradientNoise(random: Random): Noise {
  const permutation = new Uint8Array(LATTICE * 2)
  const order = random.shuffled(Array.from({ length: LATTICE }, (_, index) => index))
  for (let index = 0; index < LATTICE * 2; index++) permutation[index] = order[index % LATTICE]!
  const gradientX = new Float64Array(LATTICE)
  const gradientY = new Float64Array(LATTICE)
  for (let index = 0; index < LATTICE; index++) {
    const direction = 2 * Math.PI * random.next()
    gradientX[index] = Math.cos(direction)
    gradientY[index] = Math.sin(direction)
  }
  return (x, y) => {
    const column = Math.floor(x)
    const row = Math.floor(y)
    const dx = x - column
    const dy = y - row
    const corner = (right: number, up: number) => {
      const at = permutation[permutation[(column + right) & 255]! + ((row + up) & 255)]!
      return gradientX[at]! * (dx - right) + gradientY[at]! * (dy - up)
    }
    const u = dx * dx * dx * (dx * (dx * 6 - 15) + 10)
    const v = dy * dy * dy * (dy * (dy * 6 - 15) + 10)
    const south = corner(0, 0) + u * (corner(1, 0) - corner(0, 0))
    const north = corner(0, 1) + u * (corner(1, 1) - corner(0, 1))
    return 1.5 * (south + v * (north - south))
  }
}

/** Sum of octaves, each half as wide and half as high as the one before. */
export function fractal(noise: Noise, octaves: number): Noise {
  return (x, y) => {
    let sum = 0
    let height = 1
    let scale = 1
    for (let octave = 0; octave < octaves; octave++) {
      sum += height * noise(x * scale + 17.3 * octave, y * scale - 9.1 * octave)
      height /= 2
      scale *= 2.03
    }
    return sum / 1.6
  }
}

/** Sharp crests where the noise crosses zero: 1 on a crest, toward 0 in the hollows. */
export function ridged(noise: Noise, octaves: number): Noise {
  return (x, y) => {
    let sum = 0
    let height = 1
    let scale = 1
    let total = 0
    for (let octave = 0; octave < octaves; octave++) {
      const crest = 1 - Math.min(1, Math.abs(noise(x * scale - 31.7 * octave, y * scale + 5.9 * octave)) * 1.6)
      sum += height * crest * crest
      total += height
      height /= 2
      scale *= 2.07
    }
    return sum / total
  }
}
