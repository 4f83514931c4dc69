/**
 * The upper edges of an obstacle in space. Seen from below its top, the highest point of a flat face at any bearing lies on
 * an edge of that face, so that edges and rounds are all that a skyline needs. What hangs in the air (a crown above its
 * trunk) counts as solid to the ground. Roofs: each corner of the eaves is joined to the nearer end of the ridge.
 */
import { distanceToSideM, isInRing } from './ring.ts'
import type { Obstacle, YardPoint } from './yard.ts'

/** Straight edges, six numbers each (x, y, z of both ends, m), and rounds, four each (x, y of the middle, radius, z). */
export interface TopEdges {
  straight: Float64Array
  round: Float64Array
}

export function topEdges({ shape }: Obstacle): TopEdges {
  const straight: number[] = []
  const side = (a: YardPoint, aM: number, b: YardPoint, bM: number) => straight.push(a.xM, a.yM, aM, b.xM, b.yM, bM)
  const closed = (ring: readonly YardPoint[], zM: number) => {
    for (let at = 0; at < ring.length; at++) side(ring[at]!, zM, ring[(at + 1) % ring.length]!, zM)
  }
  let round: number[] = []
  switch (shape.form) {
    case 'ring':
      closed(shape.ring, shape.topM)
      break
    case 'gable': {
      closed(shape.ring, shape.eavesM)
      const [first, second] = shape.ridge
      side(first, shape.ridgeM, second, shape.ridgeM)
      for (const corner of shape.ring) {
        const nearer = lagM(corner, first) <= lagM(corner, second) ? first : second
        side(corner, shape.eavesM, nearer, shape.ridgeM)
      }
      break
    }
    case 'round':
      round = [shape.center.xM, shape.center.yM, shape.radiusM, shape.topM]
      break
    case 'line':
      for (let at = 1; at < shape.points.length; at++)
        side(shape.points[at - 1]!, shape.topM, shape.points[at]!, shape.topM)
      break
    case 'bearing': {
      const [left, right] = boardOf(shape)
      side(left, shape.topM, right, shape.topM)
    }
  }
  return { straight: Float64Array.from(straight), round: Float64Array.from(round) }
}

/** A flat board across the line of sight, as wide as it was seen. */
export function boardOf(shape: Extract<Obstacle['shape'], { form: 'bearing' }>): [YardPoint, YardPoint] {
  const bearing = (shape.bearingDeg * Math.PI) / 180
  const halfM = shape.distanceM * Math.tan((shape.widthDeg * Math.PI) / 360)
  const xM = shape.seenFrom.xM + shape.distanceM * Math.sin(bearing)
  const yM = shape.seenFrom.yM + shape.distanceM * Math.cos(bearing)
  const alongX = Math.cos(bearing) * halfM
  const alongY = -Math.sin(bearing) * halfM
  return [
    { xM: xM - alongX, yM: yM - alongY },
    { xM: xM + alongX, yM: yM + alongY },
  ]
}

/** Horizontal distance from a point to the nearest part of an obstacle; 0 or less within it. */
export function distanceToObstacleM(obstacle: Obstacle, point: YardPoint): number {
  const { shape } = obstacle
  if (shape.form === 'round') return lagM(shape.center, point) - shape.radiusM
  if (shape.form === 'bearing') return distanceToSideM(point, ...boardOf(shape))
  if (shape.form === 'line') return nearestSideM(shape.points, point, false)
  const borderM = nearestSideM(shape.ring, point, true)
  return isInRing(shape.ring, point) ? -borderM : borderM
}

function nearestSideM(points: readonly YardPoint[], point: YardPoint, isClosed: boolean): number {
  let least = Number.POSITIVE_INFINITY
  const last = isClosed ? points.length : points.length - 1
  for (let at = 0; at < last; at++) {
    least = Math.min(least, distanceToSideM(point, points[at]!, points[(at + 1) % points.length]!))
  }
  return least
}

function lagM(a: YardPoint, b: YardPoint): number {
  return Math.hypot(a.xM - b.xM, a.yM - b.yM)
}
