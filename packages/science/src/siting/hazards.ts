/**
 * What spoils a catch from nearby, and how far a gauge should keep from it. The distances are common practice, rounded; a
 * sprinkler's is its throw and a metre of drift. Roofs drip and splash along their walls, drawn as a hazard or not.
 */
import { distanceToObstacleM } from './topEdges.ts'
import type { Hazard, HazardKind, YardPlan, YardPoint } from './yard.ts'

/** Metres to keep from each; of a sprinkler beyond its throw. Common practice. */
export const usualClearanceM: Record<HazardKind, number> = {
  downspout: 2,
  sprinkler: 1,
  'roof drip': 1.5,
  'solid fence': 1,
  animals: 2,
  'hard ground': 1,
  traffic: 3,
}
/** Throw of a sprinkler that nobody measured. Common practice. */
const USUAL_THROW_M = 5
const STEEP_GROUND_DEG = (Math.atan(1 / 3) * 180) / Math.PI

export type HazardSeen =
  | { kind: HazardKind; itemId: string; distanceM: number; neededM: number }
  | { kind: 'slope'; itemId: null; slopeDeg: number; limitDeg: number }

/** @returns what the place is too near to, nearest to its source first */
export function hazardsAt(plan: YardPlan, at: YardPoint): HazardSeen[] {
  const found: HazardSeen[] = []
  for (const { kind, itemId, distanceM, neededM } of hazardDistances(plan, at)) {
    if (distanceM < neededM) found.push({ kind, itemId, distanceM, neededM })
  }
  found.sort((a, b) => ('distanceM' in a && 'distanceM' in b ? a.distanceM / a.neededM - b.distanceM / b.neededM : 0))
  if (plan.slopeDeg !== null && plan.slopeDeg >= STEEP_GROUND_DEG) {
    found.push({ kind: 'slope', itemId: null, slopeDeg: plan.slopeDeg, limitDeg: STEEP_GROUND_DEG })
  }
  return found
}

/** Every hazard with its distance and what it needs, walls of roofs among them. */
export function hazardDistances(
  plan: Pick<YardPlan, 'hazards' | 'obstacles'>,
  at: YardPoint,
): { kind: HazardKind; itemId: string; distanceM: number; neededM: number }[] {
  const all = plan.hazards.map((hazard) => ({
    kind: hazard.kind,
    itemId: hazard.id,
    distanceM: Math.hypot(hazard.at.xM - at.xM, hazard.at.yM - at.yM),
    neededM: clearanceM(hazard),
  }))
  for (const obstacle of plan.obstacles) {
    const kind =
      obstacle.kind === 'house' || obstacle.kind === 'shed'
        ? 'roof drip'
        : obstacle.kind === 'wall'
          ? 'solid fence'
          : null
    if (kind === null) continue
    all.push({
      kind,
      itemId: obstacle.id,
      distanceM: Math.max(0, distanceToObstacleM(obstacle, at)),
      neededM: usualClearanceM[kind],
    })
  }
  return all
}

/** How far to keep from a hazard, m. */
export function clearanceM({ kind, reachM }: Hazard): number {
  if (kind === 'sprinkler') return (reachM ?? USUAL_THROW_M) + usualClearanceM.sprinkler
  return Math.max(reachM ?? 0, usualClearanceM[kind])
}
