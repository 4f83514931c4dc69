/**
 * What keeps a yard plan from being computed, and what is so unlikely that somebody should look again: one line each, with
 * the thing it concerns. Nothing is thrown and nothing is mended. The limits of height are common practice: the tallest
 * trees reach about 115 m, houses of a village rarely 30 m.
 */
import { isInRing, ringAreaM2, ringCrossesItself } from './ring.ts'
import { distanceToObstacleM } from './topEdges.ts'
import type { Obstacle, ObstacleKind, YardPlan, YardPoint } from './yard.ts'

/** `fault`: no angle is told before it is mended. `remark`: angles are told; look at it again. */
export interface YardFault {
  weight: 'fault' | 'remark'
  code: YardFaultCode
  /** What it concerns: an obstacle's or a hazard's id; null for the yard itself or the gauge. */
  itemId: string | null
  /** What was seen, as numbers: metres, degrees, or counts. */
  seen: number
  /** What was wanted: the limit that `seen` misses. */
  limit: number
}

export const yardFaultCodes = [
  'YARD_NUMBER_UNREADABLE',
  'YARD_TOO_FEW_CORNERS',
  'YARD_NO_AREA',
  'YARD_CROSSES_ITSELF',
  'YARD_TOO_LARGE',
  'YARD_SLOPE_IMPOSSIBLE',
  'OBSTACLE_TOO_FEW_CORNERS',
  'OBSTACLE_NO_AREA',
  'OBSTACLE_CROSSES_ITSELF',
  'OBSTACLE_NO_WIDTH',
  'OBSTACLE_NO_HEIGHT',
  'OBSTACLE_TOO_TALL',
  'OBSTACLE_VERY_TALL',
  'OBSTACLE_TOO_NEAR',
  'OBSTACLE_AROUND_GAUGE',
  'RIDGE_BELOW_EAVES',
  'HAZARD_REACH_IMPOSSIBLE',
  'GAUGE_OUTSIDE_YARD',
  'RIM_TOO_LOW',
  'RIM_TOO_HIGH',
] as const
export type YardFaultCode = (typeof yardFaultCodes)[number]

/** Metres. Above `usual` somebody should look again, above `most` it cannot be. Common practice. */
const tallest: Record<ObstacleKind, { usual: number; most: number }> = {
  house: { usual: 30, most: 300 },
  shed: { usual: 8, most: 50 },
  wall: { usual: 10, most: 100 },
  fence: { usual: 4, most: 30 },
  hedge: { usual: 8, most: 30 },
  tree: { usual: 50, most: 120 },
  pole: { usual: 40, most: 350 },
  other: { usual: 60, most: 350 },
}
const LEAST_AREA_M2 = 1
const MOST_EXTENT_M = 1000
const LEAST_RIM_M = 0.1
const MOST_RIM_M = 3
const NEAREST_BEARING_M = 0.2

/** @returns every fault and remark, faults first; empty where the plan is sound */
export function checkYard(plan: YardPlan): YardFault[] {
  const found: YardFault[] = []
  const add = (weight: YardFault['weight'], code: YardFaultCode, itemId: string | null, seen: number, limit: number) =>
    found.push({ weight, code, itemId, seen, limit })
  checkOutline(plan, add)
  for (const obstacle of plan.obstacles) checkObstacle(obstacle, plan, add)
  for (const { id, at, reachM } of plan.hazards) {
    if (!isNumber(at)) add('fault', 'YARD_NUMBER_UNREADABLE', id, Number.NaN, 0)
    else if (reachM !== null && !(reachM >= 0 && reachM <= 100))
      add('fault', 'HAZARD_REACH_IMPOSSIBLE', id, reachM, 100)
  }
  checkGauge(plan, found.length === 0, add)
  return found.sort((a, b) => Number(a.weight === 'remark') - Number(b.weight === 'remark'))
}

type Add = (
  weight: YardFault['weight'],
  code: YardFaultCode,
  itemId: string | null,
  seen: number,
  limit: number,
) => unknown

function checkOutline({ outline, slopeDeg }: YardPlan, add: Add): void {
  if (slopeDeg !== null && !(slopeDeg >= 0 && slopeDeg < 90)) add('fault', 'YARD_SLOPE_IMPOSSIBLE', null, slopeDeg, 90)
  if (outline.length < 3) return void add('fault', 'YARD_TOO_FEW_CORNERS', null, outline.length, 3)
  if (!outline.every(isNumber)) return void add('fault', 'YARD_NUMBER_UNREADABLE', null, Number.NaN, 0)
  const extentM = extentOf(outline)
  if (extentM > MOST_EXTENT_M) return void add('fault', 'YARD_TOO_LARGE', null, extentM, MOST_EXTENT_M)
  if (ringCrossesItself(outline)) return void add('fault', 'YARD_CROSSES_ITSELF', null, outline.length, 0)
  const areaM2 = ringAreaM2(outline)
  if (areaM2 < LEAST_AREA_M2) add('fault', 'YARD_NO_AREA', null, areaM2, LEAST_AREA_M2)
}

function checkObstacle(obstacle: Obstacle, plan: YardPlan, add: Add): void {
  const { id, kind, shape } = obstacle
  const heights = heightsOf(obstacle)
  if (!pointsOf(obstacle).every(isNumber) || !heights.every(Number.isFinite)) {
    return void add('fault', 'YARD_NUMBER_UNREADABLE', id, Number.NaN, 0)
  }
  const topM = Math.max(...heights)
  const { usual, most } = tallest[kind]
  if (Math.min(...heights) <= 0) add('fault', 'OBSTACLE_NO_HEIGHT', id, Math.min(...heights), 0)
  if (topM > most) add('fault', 'OBSTACLE_TOO_TALL', id, topM, most)
  else if (topM > usual) add('remark', 'OBSTACLE_VERY_TALL', id, topM, usual)
  if (shape.form === 'ring' || shape.form === 'gable') {
    if (shape.ring.length < 3) return void add('fault', 'OBSTACLE_TOO_FEW_CORNERS', id, shape.ring.length, 3)
    if (ringCrossesItself(shape.ring)) return void add('fault', 'OBSTACLE_CROSSES_ITSELF', id, shape.ring.length, 0)
    const areaM2 = ringAreaM2(shape.ring)
    if (areaM2 < 0.01) return void add('fault', 'OBSTACLE_NO_AREA', id, areaM2, 0.01)
  }
  if (shape.form === 'gable' && shape.ridgeM < shape.eavesM) {
    add('fault', 'RIDGE_BELOW_EAVES', id, shape.ridgeM, shape.eavesM)
  }
  if (shape.form === 'line' && shape.points.length < 2) {
    return void add('fault', 'OBSTACLE_TOO_FEW_CORNERS', id, shape.points.length, 2)
  }
  if (shape.form === 'round' && !(shape.radiusM > 0))
    return void add('fault', 'OBSTACLE_NO_WIDTH', id, shape.radiusM, 0)
  if (shape.form === 'bearing') {
    if (!(shape.distanceM >= NEAREST_BEARING_M)) {
      return void add('fault', 'OBSTACLE_TOO_NEAR', id, shape.distanceM, NEAREST_BEARING_M)
    }
    if (!(shape.widthDeg > 0 && shape.widthDeg <= 170)) {
      return void add('fault', 'OBSTACLE_NO_WIDTH', id, shape.widthDeg, 0)
    }
  }
  if (plan.gauge === null || !isNumber(plan.gauge.at)) return
  const distanceM = distanceToObstacleM(obstacle, plan.gauge.at)
  if (distanceM <= 0) add('fault', 'OBSTACLE_AROUND_GAUGE', id, distanceM, 0)
}

function checkGauge({ gauge, outline }: YardPlan, isOutlineSound: boolean, add: Add): void {
  if (gauge === null) return
  if (!isNumber(gauge.at) || !Number.isFinite(gauge.rimM)) {
    return void add('fault', 'YARD_NUMBER_UNREADABLE', null, Number.NaN, 0)
  }
  if (gauge.rimM < LEAST_RIM_M) add('fault', 'RIM_TOO_LOW', null, gauge.rimM, LEAST_RIM_M)
  if (gauge.rimM > MOST_RIM_M) add('fault', 'RIM_TOO_HIGH', null, gauge.rimM, MOST_RIM_M)
  if (isOutlineSound && !isInRing(outline, gauge.at)) add('fault', 'GAUGE_OUTSIDE_YARD', null, 0, 0)
}

function pointsOf({ shape }: Obstacle): readonly YardPoint[] {
  switch (shape.form) {
    case 'ring':
      return shape.ring
    case 'gable':
      return [...shape.ring, ...shape.ridge]
    case 'round':
      return [shape.center]
    case 'line':
      return shape.points
    case 'bearing':
      return [shape.seenFrom, { xM: shape.bearingDeg, yM: shape.distanceM }]
  }
}

function heightsOf({ shape }: Obstacle): number[] {
  return shape.form === 'gable' ? [shape.eavesM, shape.ridgeM] : [shape.topM]
}

function isNumber({ xM, yM }: YardPoint): boolean {
  return Number.isFinite(xM) && Number.isFinite(yM)
}

function extentOf(ring: readonly YardPoint[]): number {
  const xs = ring.map(({ xM }) => xM)
  const ys = ring.map(({ yM }) => yM)
  return Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys))
}
