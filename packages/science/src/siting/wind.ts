/**
 * What wind takes from a catch. Shown beside a site as a caution, NEVER applied to a reading: the factors hold for other
 * gauges than a small plastic one, for means of many days, and for winds that nobody measures in a yard.
 */
import { ScienceError } from '../error.ts'

export type Phase = 'rain' | 'mixed' | 'snow'

/** Roughness lengths of the ground, m, [WMO8] 6.4.1. */
export const roughnessM = { grass: 0.03, snow: 0.01 } as const

/**
 * Wind at the rim from wind at another height: U_h = U_H · ln(h/z0)/ln(H/z0) · (1 − 0.024 α), [WMO8] 6.4.1 after Sevruk.
 * @param windMPerS       at `heightM`, usually 10 m
 * @param meanAngleDeg    mean elevation of the obstacles about the gauge; the formula is given for 0 to 26
 * @throws {ScienceError} OUT_OF_DOMAIN where a height is not above the roughness, or a number is negative
 */
export function windAtRimMPerS(
  windMPerS: number,
  {
    heightM = 10,
    rimM,
    meanAngleDeg = 0,
    z0M = roughnessM.grass,
  }: { heightM?: number; rimM: number; meanAngleDeg?: number; z0M?: number },
): number {
  if (!(rimM > z0M && heightM > z0M && windMPerS >= 0 && meanAngleDeg >= 0)) {
    throw new ScienceError(
      'OUT_OF_DOMAIN',
      `A wind of ${windMPerS} m/s from ${heightM} m to ${rimM} m over ${z0M} m cannot be.`,
    )
  }
  return windMPerS * (Math.log(rimM / z0M) / Math.log(heightM / z0M)) * Math.max(0, 1 - 0.024 * meanAngleDeg)
}

/** Daily mean winds at the rim that the daily formulas were fitted on end near here, m/s ([Yang1998], from memory). */
export const DAILY_WIND_LIMIT_M_PER_S = 6.5
/** Mean angles that the wind formula is given for. */
export const ANGLE_LIMIT_DEG = 26

/**
 * Share of true precipitation that an unshielded or shielded 8-inch gauge catches in a day, 0 to 1, by the mean wind at
 * its rim: [Yang1998].
 */
export function dailyCatchShare(phase: Phase, windMPerS: number, isShielded: boolean): number {
  const w = windMPerS
  const percent = isShielded
    ? { rain: Math.exp(4.606 - 0.041 * w ** 0.69), mixed: 101.04 - 5.62 * w, snow: Math.exp(4.61 - 0.04 * w ** 1.75) }
    : { rain: Math.exp(4.606 - 0.062 * w ** 0.58), mixed: 100.77 - 8.34 * w, snow: Math.exp(4.606 - 0.157 * w ** 1.28) }
  return Math.min(1, Math.max(0, percent[phase] / 100))
}

const halfHourFactors = {
  'unshielded rim': { a: 0.0785, b: 0.729, c: 0.407, capMPerS: 7.2 },
  'shielded rim': { a: 0.0348, b: 1.366, c: 0.779, capMPerS: 7.2 },
  'unshielded 10 m': { a: 0.0623, b: 0.776, c: 0.431, capMPerS: 9 },
  'shielded 10 m': { a: 0.0281, b: 1.628, c: 0.837, capMPerS: 9 },
} as const

/**
 * The same over half an hour, by air temperature: CE = exp(−a U (1 − atan(b T) + c)), [Kochendorfer2017] table 2, for
 * weighing gauges, wind capped, given for 5 °C and below.
 */
export function halfHourCatchShare(
  gauge: keyof typeof halfHourFactors,
  windMPerS: number,
  temperatureC: number,
): number {
  const { a, b, c, capMPerS } = halfHourFactors[gauge]
  return Math.min(1, Math.exp(-a * Math.min(windMPerS, capMPerS) * (1 - Math.atan(b * temperatureC) + c)))
}

export interface WindCaution {
  windAtRimMPerS: number
  /** Shares lost, 0 to 1, of rain, mixed and snow. */
  lost: Record<Phase, number>
  /** Whether wind or shelter lie beyond what the formulas were made from; the shares are then only a direction. */
  isBeyondRange: boolean
}

/**
 * The caution for a site: losses of an unshielded gauge at a wind 10 m above open ground.
 * @param meanAngleDeg  of the skyline, see skyline.ts; a larger one than 26° is taken as 26
 */
export function windCaution(
  wind10mMPerS: number,
  rimM: number,
  meanAngleDeg: number,
  hasWindShield: boolean,
): WindCaution {
  const angleDeg = Math.min(meanAngleDeg, ANGLE_LIMIT_DEG)
  const at = (z0M: number) => windAtRimMPerS(wind10mMPerS, { rimM, meanAngleDeg: angleDeg, z0M })
  const overGrass = at(roughnessM.grass)
  const overSnow = at(roughnessM.snow)
  const lost = (phase: Phase, wind: number) => 1 - dailyCatchShare(phase, wind, hasWindShield)
  return {
    windAtRimMPerS: overGrass,
    lost: { rain: lost('rain', overGrass), mixed: lost('mixed', overGrass), snow: lost('snow', overSnow) },
    isBeyondRange: meanAngleDeg > ANGLE_LIMIT_DEG || Math.max(overGrass, overSnow) > DAILY_WIND_LIMIT_M_PER_S,
  }
}
