/**
 * A yard on paper: its outline, what stands in it, and where the gauge is. Positions in metres on a plane of the yard's own,
 * x to the east, y to true north. Heights in metres above the ground at the gauge. What a plan may not hold: checkYard.ts.
 */
export interface YardPoint {
  xM: number
  yM: number
}

/** A closed ring without the first point again at its end; either way round. */
export type YardRing = readonly YardPoint[]

export const obstacleKinds = ['house', 'shed', 'wall', 'fence', 'hedge', 'tree', 'pole', 'other'] as const
export type ObstacleKind = (typeof obstacleKinds)[number]

/**
 * How an obstacle stands on the plan. `ring`: a block of one height, a wall of a house or a crown drawn as a polygon.
 * `gable`: a ring at the height of its eaves with a ridge above. `round`: a crown or a pole. `line`: a fence or a hedge.
 * `bearing`: only seen from the gauge, so many degrees of arc wide; it stays where it was seen from when the gauge is moved.
 */
export type ObstacleShape =
  | { form: 'ring'; ring: YardRing; topM: number }
  | { form: 'gable'; ring: YardRing; eavesM: number; ridge: readonly [YardPoint, YardPoint]; ridgeM: number }
  | { form: 'round'; center: YardPoint; radiusM: number; topM: number }
  | { form: 'line'; points: readonly YardPoint[]; topM: number }
  | { form: 'bearing'; seenFrom: YardPoint; bearingDeg: number; distanceM: number; topM: number; widthDeg: number }

export interface Obstacle {
  id: string
  kind: ObstacleKind
  /** In the words of who drew it, e.g. `the old pear tree`; empty where nobody named it. */
  name: string
  shape: ObstacleShape
}

export const hazardKinds = [
  'downspout',
  'sprinkler',
  'roof drip',
  'solid fence',
  'animals',
  'hard ground',
  'traffic',
] as const
export type HazardKind = (typeof hazardKinds)[number]

/** What spoils a catch from nearby. */
export interface Hazard {
  id: string
  kind: HazardKind
  name: string
  at: YardPoint
  /** How far it reaches: of a sprinkler its throw. The usual distance for its kind where null. */
  reachM: number | null
}

export interface YardGauge {
  at: YardPoint
  rimM: number
  hasWindShield: boolean
}

export interface YardPlan {
  outline: YardRing
  obstacles: readonly Obstacle[]
  hazards: readonly Hazard[]
  /** Steepest slope of the ground around the gauge; null where nobody measured it. */
  slopeDeg: number | null
  /** Null before a place is chosen. */
  gauge: YardGauge | null
}

/** False for an empty sheet: a site of which there are photos alone, or nothing yet. */
export function isDrawn({ outline, obstacles, gauge }: Pick<YardPlan, 'outline' | 'obstacles' | 'gauge'>): boolean {
  return outline.length > 0 || obstacles.length > 0 || gauge !== null
}
