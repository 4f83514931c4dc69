/**
 * Kinetic energy of a hailstone as it lands in still air, as a range: E = ½ m v², m = ρ π D³ / 6 of a solid sphere of
 * 900 kg/m³, v the slowest and the fastest of the published fall speeds (hailFall.ts). Wind adds to it; spiked or spongy
 * stones weigh less.
 */
import { hailDensityKgPerM3, hailFallSpeedsMps } from './hailFall.ts'

export interface HailEnergy {
  massG: number
  /** J. */
  lowJ: number
  highJ: number
  slowMps: number
  fastMps: number
}

/** @throws {ScienceError} OUT_OF_DOMAIN unless the diameter is above 0 */
export function hailEnergy(diameterMm: number): HailEnergy {
  const speeds = Object.values(hailFallSpeedsMps(diameterMm)) as number[]
  const slowMps = Math.min(...speeds)
  const fastMps = Math.max(...speeds)
  const massKg = hailMassKg(diameterMm)
  return {
    massG: 1000 * massKg,
    lowJ: 0.5 * massKg * slowMps ** 2,
    highJ: 0.5 * massKg * fastMps ** 2,
    slowMps,
    fastMps,
  }
}

/** Of a solid sphere, kg. */
export function hailMassKg(diameterMm: number): number {
  return (hailDensityKgPerM3 * Math.PI * (diameterMm / 1000) ** 3) / 6
}
