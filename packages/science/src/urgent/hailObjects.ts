/**
 * Sizes that people name by an object. They are conventions of warning offices, not the objects' true diameters: a quarter
 * stands for 1.00 in and measures 0.955. "Dime" is left out, because offices use it for two sizes; where they use
 * "grapefruit" and "softball" the other way round, the two stand as here. Source: [NWSHail].
 */
import { inchesFromMm, mmFromInches } from '../units/convertUm.ts'

export interface HailObject {
  name: HailObjectName
  inches: number
  diameterMm: number
}

/** Small to large. */
export const hailObjectNames = [
  'pea',
  'marble',
  'penny',
  'nickel',
  'quarter',
  'half dollar',
  'walnut',
  'golf ball',
  'hen egg',
  'tennis ball',
  'baseball',
  'large apple',
  'grapefruit',
  'softball',
] as const

export type HailObjectName = (typeof hailObjectNames)[number]

const inchesOf: Record<HailObjectName, number> = {
  pea: 0.25,
  marble: 0.5,
  penny: 0.75,
  nickel: 0.88,
  quarter: 1,
  'half dollar': 1.25,
  walnut: 1.5,
  'golf ball': 1.75,
  'hen egg': 2,
  'tennis ball': 2.5,
  baseball: 2.75,
  'large apple': 3,
  grapefruit: 4,
  softball: 4.5,
}

export const hailObjects: readonly HailObject[] = hailObjectNames.map((name) => ({
  name,
  inches: inchesOf[name],
  diameterMm: mmFromInches(inchesOf[name]),
}))

/** The size that the object stands for, mm. */
export function hailObjectMm(name: HailObjectName): number {
  return mmFromInches(inchesOf[name])
}

/** The largest object that a stone is at least as large as, to a hundredth of an inch; null below a pea. */
export function hailSizeClass(diameterMm: number): HailObjectName | null {
  const hundredths = Math.round(100 * inchesFromMm(diameterMm))
  return hailObjects.findLast(({ inches }) => hundredths >= Math.round(100 * inches))?.name ?? null
}
