/** Items of a plan: made with usual sizes, moved, changed, removed. Pure; every function answers with a new plan. */
import type { HazardKind, Obstacle, ObstacleKind, YardPlan, YardPoint, YardRing } from '@gaugewright/science'

export const emptyPlan: YardPlan = { outline: [], obstacles: [], hazards: [], slopeDeg: null, gauge: null }

/** Metres. Sizes that people change at once; common practice. */
const usual: Record<ObstacleKind, { topM: number; sizeM: number }> = {
  house: { topM: 3, sizeM: 8 },
  shed: { topM: 2.5, sizeM: 3 },
  wall: { topM: 2, sizeM: 6 },
  fence: { topM: 1.8, sizeM: 8 },
  hedge: { topM: 1.5, sizeM: 8 },
  tree: { topM: 6, sizeM: 2 },
  pole: { topM: 5, sizeM: 0.15 },
  other: { topM: 2, sizeM: 2 },
}

export function rectangle(at: YardPoint, widthM: number, depthM: number): YardRing {
  const [w, d] = [widthM / 2, depthM / 2]
  return [
    { xM: at.xM - w, yM: at.yM - d },
    { xM: at.xM + w, yM: at.yM - d },
    { xM: at.xM + w, yM: at.yM + d },
    { xM: at.xM - w, yM: at.yM + d },
  ]
}

/** A lot that is there to be changed. */
export const plainLot: YardPlan = {
  outline: rectangle({ xM: 10, yM: 15 }, 20, 30),
  obstacles: [usualObstacle('house', 'house', { xM: 10, yM: 24 })],
  hazards: [],
  slopeDeg: null,
  gauge: { at: { xM: 10, yM: 9 }, rimM: 0.6, hasWindShield: false },
}

export function usualObstacle(id: string, kind: ObstacleKind, at: YardPoint): Obstacle {
  const { topM, sizeM } = usual[kind]
  const base = { id, kind, name: '' }
  switch (kind) {
    case 'house': {
      const ring = rectangle(at, sizeM, sizeM * 0.75)
      const ridge: [YardPoint, YardPoint] = [
        { xM: at.xM - sizeM / 2, yM: at.yM },
        { xM: at.xM + sizeM / 2, yM: at.yM },
      ]
      return { ...base, shape: { form: 'gable', ring, eavesM: topM, ridge, ridgeM: topM + 2.5 } }
    }
    case 'tree':
    case 'pole':
      return { ...base, shape: { form: 'round', center: at, radiusM: sizeM, topM } }
    case 'fence':
    case 'hedge':
    case 'wall':
      return {
        ...base,
        shape: {
          form: 'line',
          points: [
            { xM: at.xM - sizeM / 2, yM: at.yM },
            { xM: at.xM + sizeM / 2, yM: at.yM },
          ],
          topM,
        },
      }
    default:
      return { ...base, shape: { form: 'ring', ring: rectangle(at, sizeM, sizeM), topM } }
  }
}

/** From corners that were drawn: a line for what is long, a ring for what stands, a crown around its middle for a tree. */
export function drawnObstacle(id: string, kind: ObstacleKind, corners: readonly YardPoint[]): Obstacle {
  const middle = middleOf(corners)
  const base = usualObstacle(id, kind, middle)
  const { topM } = usual[kind]
  switch (kind) {
    case 'fence':
    case 'hedge':
    case 'wall':
      return { ...base, shape: { form: 'line', points: corners, topM } }
    case 'house': {
      if (corners.length < 3) return base
      return {
        ...base,
        shape: { form: 'gable', ring: corners, eavesM: topM, ridge: ridgeOf(corners), ridgeM: topM + 2.5 },
      }
    }
    case 'tree':
    case 'pole': {
      const radiusM = corners.length < 2 ? usual[kind].sizeM : Math.max(...corners.map((one) => lagM(one, middle)))
      return { ...base, shape: { form: 'round', center: middle, radiusM, topM } }
    }
    default:
      return corners.length < 3 ? base : { ...base, shape: { form: 'ring', ring: corners, topM } }
  }
}

/** Along the longer way of the ring, between the middles of its two shortest opposite sides. */
export function ridgeOf(ring: YardRing): [YardPoint, YardPoint] {
  const sides = ring.map((one, at) => ({ from: one, to: ring[(at + 1) % ring.length]! }))
  const lengths = sides.map(({ from, to }) => lagM(from, to))
  const shortest = lengths.indexOf(Math.min(...lengths))
  const opposite = (shortest + Math.floor(ring.length / 2)) % ring.length
  const half = (index: number) => middleOf([sides[index]!.from, sides[index]!.to])
  return [half(shortest), half(opposite)]
}

export function middleOf(points: readonly YardPoint[]): YardPoint {
  const count = Math.max(1, points.length)
  return {
    xM: points.reduce((sum, { xM }) => sum + xM, 0) / count,
    yM: points.reduce((sum, { yM }) => sum + yM, 0) / count,
  }
}

export function cornersOf({ shape }: Obstacle): readonly YardPoint[] {
  if (shape.form === 'ring' || shape.form === 'gable') return shape.ring
  if (shape.form === 'line') return shape.points
  return [shape.form === 'round' ? shape.center : shape.seenFrom]
}

/** The obstacle with its corners at other places. */
export function withCorners(obstacle: Obstacle, corners: readonly YardPoint[]): Obstacle {
  const { shape } = obstacle
  switch (shape.form) {
    case 'ring':
      return { ...obstacle, shape: { ...shape, ring: corners } }
    case 'gable':
      return { ...obstacle, shape: { ...shape, ring: corners, ridge: ridgeOf(corners) } }
    case 'line':
      return { ...obstacle, shape: { ...shape, points: corners } }
    case 'round':
      return { ...obstacle, shape: { ...shape, center: corners[0] ?? shape.center } }
    case 'bearing':
      return { ...obstacle, shape: { ...shape, seenFrom: corners[0] ?? shape.seenFrom } }
  }
}

export type Chosen = { kind: 'gauge' } | { kind: 'outline' } | { kind: 'obstacle' | 'hazard'; id: string } | null

/** The chosen thing moved by so many metres. */
export function moved(plan: YardPlan, chosen: Chosen, dxM: number, dyM: number): YardPlan {
  const shift = ({ xM, yM }: YardPoint): YardPoint => ({ xM: round(xM + dxM), yM: round(yM + dyM) })
  if (chosen === null) return plan
  if (chosen.kind === 'gauge') {
    return plan.gauge === null ? plan : { ...plan, gauge: { ...plan.gauge, at: shift(plan.gauge.at) } }
  }
  if (chosen.kind === 'outline') return { ...plan, outline: plan.outline.map(shift) }
  if (chosen.kind === 'hazard') {
    return { ...plan, hazards: plan.hazards.map((one) => (one.id === chosen.id ? { ...one, at: shift(one.at) } : one)) }
  }
  return {
    ...plan,
    obstacles: plan.obstacles.map((one) => {
      if (one.id !== chosen.id) return one
      const shifted = withCorners(one, cornersOf(one).map(shift))
      return one.shape.form === 'gable' && shifted.shape.form === 'gable'
        ? { ...shifted, shape: { ...shifted.shape, ridge: [shift(one.shape.ridge[0]), shift(one.shape.ridge[1])] } }
        : shifted
    }),
  }
}

/** One corner of the chosen thing at another place. */
export function withCornerAt(plan: YardPlan, chosen: Chosen, index: number, at: YardPoint): YardPlan {
  const swap = (corners: readonly YardPoint[]) => corners.map((corner, k) => (k === index ? at : corner))
  if (chosen?.kind === 'outline') return { ...plan, outline: swap(plan.outline) }
  if (chosen?.kind !== 'obstacle') return plan
  return {
    ...plan,
    obstacles: plan.obstacles.map((one) => (one.id === chosen.id ? withCorners(one, swap(cornersOf(one))) : one)),
  }
}

export function without(plan: YardPlan, chosen: Chosen): YardPlan {
  if (chosen === null) return plan
  if (chosen.kind === 'gauge') return { ...plan, gauge: null }
  if (chosen.kind === 'outline') return { ...plan, outline: [] }
  return {
    ...plan,
    obstacles: plan.obstacles.filter(({ id }) => id !== chosen.id),
    hazards: plan.hazards.filter(({ id }) => id !== chosen.id),
  }
}

export function withHazard(plan: YardPlan, id: string, kind: HazardKind, at: YardPoint): YardPlan {
  return { ...plan, hazards: [...plan.hazards, { id, kind, name: '', at, reachM: kind === 'sprinkler' ? 5 : null }] }
}

/** A name of its own within the plan. */
export function freshId(plan: YardPlan): string {
  const taken = new Set([...plan.obstacles, ...plan.hazards].map(({ id }) => id))
  let number = taken.size + 1
  while (taken.has(`item ${number}`)) number++
  return `item ${number}`
}

/** To the centimetre: nobody measures a yard finer. */
export function round(metres: number): number {
  return Math.round(metres * 100) / 100
}

function lagM(a: YardPoint, b: YardPoint): number {
  return Math.hypot(a.xM - b.xM, a.yM - b.yM)
}

/** Whether two plans say the same, in whatever order their parts were written down. */
export function samePlan(a: YardPlan, b: YardPlan): boolean {
  return JSON.stringify(a, inOrder) === JSON.stringify(b, inOrder)
}

function inOrder(_: string, value: unknown): unknown {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return value
  return Object.fromEntries(Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1)))
}
