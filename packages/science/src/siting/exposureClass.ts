/**
 * Exposure class of a gauge for precipitation, 1 (reference) to 5 (unsuitable), by the siting classes of [WMO8] Annex 1.D,
 * which are those of [ISO19289]. Ratio r = distance / height above the rim, elevation = atan(1/r). In this order: any r up
 * to 0.5 -> 5; any r up to 1, or a slope above 30° -> 4; any r below 2, or a slope of 1/3 and more -> 3; else 1 where the
 * gauge stands within an even ring of low obstacles seen under 14° to 26.6°, or has a wind shield and nothing nearer than
 * four times its height; else 2. A ratio of just 0.5 is not settled by the wording: class 5 is taken.
 */
import type { Skyline } from './skyline.ts'

export type ExposureClass = 1 | 2 | 3 | 4 | 5

export type ClassReason =
  | { kind: 'obstacle'; obstacleId: string; ratio: number; elevationDeg: number }
  | { kind: 'slope'; slopeDeg: number }
  | { kind: 'even ring' }
  | { kind: 'wind shield' }
  /** Class 2 and no better: the yard is open, and wind carries rain over the gauge. */
  | { kind: 'no shelter' }

/** What would bring one obstacle to a better class; null where that way does not lead there. */
export interface Betterment {
  obstacleId: string
  toClass: ExposureClass
  /** Rim this high, m; null where it would have to stand above 2 m. */
  rimM: number | null
  /** Move the gauge this much further from it, m. */
  awayM: number
  /** Or the obstacle cut to this height, m. */
  cutToM: number
}

export interface Exposure {
  class: ExposureClass
  /** What decided: everything that alone would lead to this class. */
  reasons: ClassReason[]
  /** Of what stands between this class and the next better one; empty in classes 1 and 2. */
  betterments: Betterment[]
  /** Added uncertainty of a catch, percent, [WMO8]: none in class 1; `most` null where no limit is given. */
  addedPercent: { least: number; most: number | null }
  isSlopeKnown: boolean
}

const CLASS_2_RATIO = 2
const GENTLE_SLOPE_DEG = (Math.atan(1 / 3) * 180) / Math.PI
const STEEP_SLOPE_DEG = 30
const RING_LEAST_DEG = (Math.atan(1 / 4) * 180) / Math.PI
const RING_MOST_DEG = (Math.atan(1 / 2) * 180) / Math.PI
const HIGHEST_RIM_M = 2
const ROUNDING = 1e-9

const added: Record<ExposureClass, Exposure['addedPercent']> = {
  1: { least: 0, most: 0 },
  2: { least: 0, most: 5 },
  3: { least: 10, most: 25 },
  4: { least: 25, most: 100 },
  5: { least: 100, most: null },
}

export function exposureClass(
  skyline: Pick<Skyline, 'obstacles' | 'elevationDeg' | 'rimM'>,
  ground: { slopeDeg: number | null; hasWindShield: boolean },
): Exposure {
  const slopeDeg = ground.slopeDeg ?? 0
  const ofRatio = (ratio: number): ExposureClass =>
    ratio <= 0.5 + ROUNDING ? 5 : ratio <= 1 + ROUNDING ? 4 : ratio < CLASS_2_RATIO - ROUNDING ? 3 : 2
  const ofSlope: ExposureClass = slopeDeg > STEEP_SLOPE_DEG ? 4 : slopeDeg >= GENTLE_SLOPE_DEG - ROUNDING ? 3 : 2
  const worst = Math.max(ofSlope, ...skyline.obstacles.map(({ ratio }) => ofRatio(ratio))) as ExposureClass
  const answer = (chosen: ExposureClass, reasons: ClassReason[]): Exposure => ({
    class: chosen,
    reasons,
    betterments: chosen > 2 ? bettermentsOf(skyline, chosen, ofRatio) : [],
    addedPercent: added[chosen],
    isSlopeKnown: ground.slopeDeg !== null,
  })
  if (worst > 2) {
    const reasons: ClassReason[] = skyline.obstacles
      .filter(({ ratio }) => ofRatio(ratio) === worst)
      .sort((a, b) => a.ratio - b.ratio)
      .map(({ obstacleId, ratio, elevationDeg }) => ({ kind: 'obstacle', obstacleId, ratio, elevationDeg }))
    if (ofSlope === worst) reasons.push({ kind: 'slope', slopeDeg })
    return answer(worst, reasons)
  }
  const isRing = skyline.elevationDeg.every(
    (angle) => angle >= RING_LEAST_DEG - ROUNDING && angle <= RING_MOST_DEG + ROUNDING,
  )
  if (isRing) return answer(1, [{ kind: 'even ring' }])
  if (ground.hasWindShield && skyline.obstacles.every(({ ratio }) => ratio >= 4 - ROUNDING)) {
    return answer(1, [{ kind: 'wind shield' }])
  }
  const near = skyline.obstacles.filter(({ ratio }) => ratio < 4).sort((a, b) => a.ratio - b.ratio)[0]
  if (near === undefined) return answer(2, [{ kind: 'no shelter' }])
  const { obstacleId, ratio, elevationDeg } = near
  return answer(2, [{ kind: 'obstacle', obstacleId, ratio, elevationDeg }])
}

/** Each obstacle that keeps the gauge in this class, and what it would take to bring it to the next better one. */
function bettermentsOf(
  { obstacles, rimM }: Pick<Skyline, 'obstacles' | 'rimM'>,
  present: ExposureClass,
  ofRatio: (ratio: number) => ExposureClass,
): Betterment[] {
  const toClass = (present - 1) as ExposureClass
  // Class 4 asks for more than 0.5 and class 3 for more than 1, class 2 for 2: a hundredth beyond, to be on the safe side.
  const neededRatio = toClass === 4 ? 0.51 : toClass === 3 ? 1.01 : CLASS_2_RATIO
  return obstacles
    .filter(({ ratio }) => ofRatio(ratio) === present)
    .map(({ obstacleId, distanceM, aboveRimM }) => {
      const mayRiseM = distanceM / neededRatio
      const neededRimM = rimM + aboveRimM - mayRiseM
      return {
        obstacleId,
        toClass,
        rimM: neededRimM <= HIGHEST_RIM_M ? neededRimM : null,
        awayM: neededRatio * aboveRimM - distanceM,
        cutToM: rimM + mayRiseM,
      }
    })
}
