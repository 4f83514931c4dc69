/**
 * How fast hailstones fall near the ground (about 1000 hPa), by diameter; D in cm, v in m/s. Published fits differ by a
 * factor of two, because stones differ in shape and density; so a range is told, never one number.
 *
 *   [Heymsfield2018]        6.1 D^0.72 from 0.5 cm on, 6.35 D^0.87 below
 *   [HeymsfieldWright2014]  4.88 D^0.84
 *   [KnightHeymsfield1983]  8.445 D^0.553
 *   smooth sphere           v² = 4 ρᵢ g D / (3 ρₐ c), ρᵢ = 900, ρₐ = 1.2 kg/m³, drag c = 0.6: as fast as it gets
 */
import { ScienceError } from '../error.ts'

/** Of a solid stone, kg/m³. */
export const hailDensityKgPerM3 = 900
const airDensityKgPerM3 = 1.2
const sphereDrag = 0.6
const gravityMps2 = 9.81

export interface HailFallSpeeds {
  heymsfield2018: number
  heymsfieldWright2014: number
  knightHeymsfield1983: number
  smoothSphere: number
}

/** @throws {ScienceError} OUT_OF_DOMAIN unless the diameter is above 0 */
export function hailFallSpeedsMps(diameterMm: number): HailFallSpeeds {
  if (!(diameterMm > 0 && diameterMm < Number.POSITIVE_INFINITY)) {
    throw new ScienceError('OUT_OF_DOMAIN', `A hailstone of ${diameterMm} mm has no fall speed.`)
  }
  const cm = diameterMm / 10
  const perDrag = (4 * hailDensityKgPerM3 * gravityMps2) / (3 * airDensityKgPerM3 * sphereDrag)
  return {
    heymsfield2018: cm >= 0.5 ? 6.1 * cm ** 0.72 : 6.35 * cm ** 0.87,
    heymsfieldWright2014: 4.88 * cm ** 0.84,
    knightHeymsfield1983: 8.445 * cm ** 0.553,
    smoothSphere: Math.sqrt((perDrag * diameterMm) / 1000),
  }
}
