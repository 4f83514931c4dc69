/**
 * A smooth random field on the plane, mean 0, variance 1: a sum of plane waves with random directions and phases.
 * The wave numbers are drawn so that correlation falls off about as exp(-distance / lengthKm).
 */
import type { Random } from './random.ts'

export type SmoothField = (x: number, y: number) => number

/**
 * @param length  distance (in the caller's unit) at which correlation has fallen to about 1/e
 * @param waves   plane waves summed; more is closer to Gaussian and slower
 */
export function smoothField(random: Random, length: number, waves = 12): SmoothField {
  const kx = new Float64Array(waves)
  const ky = new Float64Array(waves)
  const phase = new Float64Array(waves)
  for (let wave = 0; wave < waves; wave++) {
    // Radial spectrum of an exponential correlation in two dimensions, cut where waves get shorter than length / 4.
    const share = (wave + random.next()) / waves
    const waveNumber = Math.min(Math.sqrt(1 / (1 - 0.97 * share) ** 2 - 1), 25) / length
    const direction = 2 * Math.PI * random.next()
    kx[wave] = waveNumber * Math.cos(direction)
    ky[wave] = waveNumber * Math.sin(direction)
    phase[wave] = 2 * Math.PI * random.next()
  }
  const scale = Math.sqrt(2 / waves)
  return (x, y) => {
    let sum = 0
    for (let wave = 0; wave < waves; wave++) sum += Math.cos(kx[wave]! * x + ky[wave]! * y + phase[wave]!)
    return sum * scale
  }
}
