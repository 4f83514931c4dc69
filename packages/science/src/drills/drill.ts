/**
 * Drills: exercises made by a seed, the same on every machine. A gauge drill says what is in the gauge and how it is looked
 * at; the drawing shows just that, to scale, and the answer is typed as on the phone page. Other drills are questions with
 * choices; their words stand with the pages, by `question` and `option`.
 */
import type { Unit } from '../reading/reading.ts'
import type { YardPlan, YardPoint } from '../siting/yard.ts'

export const drillSkills = [
  'meniscus',
  'hundredths',
  'eye level',
  'overflow',
  'trace',
  'dew',
  'zero or silence',
  'several days',
  'hail size',
  'site',
  'safety',
] as const
export type DrillSkill = (typeof drillSkills)[number]

/** Heights in the tube are depths times its magnification: 10 for the usual gauge, the ratio of funnel to tube (common practice). */
export const TUBE_MAGNIFICATION = 10
/** Inner diameter of a tube for a 4-inch funnel, mm: D / √10. */
export const TUBE_INNER_MM = 32.13

export interface GaugeDrill {
  kind: 'gauge'
  skill: 'meniscus' | 'hundredths' | 'eye level' | 'overflow' | 'trace' | 'dew'
  unit: Unit
  stepUm: number
  /** What the tube holds to its upper mark. */
  tubeUm: number
  /** Depths at the BOTTOM of the curve, in the order in which the tube is filled: one, or several of an overflow. */
  fillsUm: readonly number[]
  /** How much higher the water climbs at the wall, as a depth on the scale. */
  climbUm: number
  /**
   * Eye above (positive) or below the water, degrees. The scale stands before the middle of the tube by its radius, so that
   * the water is seen against a mark too high by radius · tan(angle), from below too low. 0: at its level.
   */
  eyeDeg: number
  drops: 'none' | 'trace' | 'dew'
  /** The right answer. */
  trueUm: number
  isTrace: boolean
}

export interface ChoiceDrill {
  kind: 'choice'
  skill: 'zero or silence' | 'several days' | 'safety' | 'hail size'
  question: string
  options: readonly string[]
  right: string
  /** Amounts, hours and days that the words name. */
  numbers: Readonly<Record<string, number>>
}

export interface HailDrill {
  kind: 'hail'
  skill: 'hail size'
  /** A stone beside a ruler: longest and shortest way across, mm, and how it is turned. */
  longMm: number
  shortMm: number
  turnDeg: number
  unit: Unit
}

export interface SiteDrill {
  kind: 'site'
  skill: 'site'
  plan: YardPlan
  spots: readonly YardPoint[]
  rimM: number
  /** Place in `spots` of the best, by the lowest worst angle away from hazards. */
  right: number
}

/** Sizes are named by objects in a telephone call: which size does the object stand for? Options are its sizes in mm. */
export const HAIL_QUESTION = 'hail object'

export type Drill = GaugeDrill | ChoiceDrill | HailDrill | SiteDrill
