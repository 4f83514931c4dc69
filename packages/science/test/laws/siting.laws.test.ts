/**
 * What must hold for any yard. Expected values come from rays: the yard's walls, crowns and roofs are cut into points, and
 * each point is looked at, apart from the code under test.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bestSpots } from '../../src/siting/bestSpots.ts'
import { checkYard } from '../../src/siting/checkYard.ts'
import { skylineAt } from '../../src/siting/skyline.ts'
import type { Obstacle, YardPlan, YardPoint } from '../../src/siting/yard.ts'

const DEG = 180 / Math.PI

/** A number between two, to the centimetre. */
const metres = (least: number, most: number) => fc.integer({ min: least * 100, max: most * 100 }).map((cm) => cm / 100)
const point = fc.record({ xM: metres(0, 40), yM: metres(0, 30) })

const obstacle: fc.Arbitrary<Obstacle> = fc
  .tuple(
    point,
    metres(0.5, 5),
    metres(2, 9),
    metres(2, 14),
    fc.constantFrom('ring', 'gable', 'round', 'line', 'bearing'),
    fc.integer({ min: 0, max: 359 }),
  )
  .map(([at, halfM, longM, topM, form, turnDeg]): Obstacle => {
    const turn = (x: number, y: number): YardPoint => ({
      xM: at.xM + x * Math.cos(turnDeg / DEG) - y * Math.sin(turnDeg / DEG),
      yM: at.yM + x * Math.sin(turnDeg / DEG) + y * Math.cos(turnDeg / DEG),
    })
    const ring = [turn(-longM, -halfM), turn(longM, -halfM), turn(longM, halfM), turn(-longM, halfM)]
    const base = { id: '', name: '' }
    switch (form) {
      case 'ring':
        return { ...base, kind: 'shed', shape: { form, ring, topM: Math.min(topM, 6) } }
      case 'gable':
        return {
          ...base,
          kind: 'house',
          shape: { form, ring, eavesM: topM * 0.7, ridge: [turn(-longM * 0.6, 0), turn(longM, 0)], ridgeM: topM },
        }
      case 'round':
        return { ...base, kind: 'tree', shape: { form, center: at, radiusM: halfM, topM } }
      case 'line':
        return { ...base, kind: 'hedge', shape: { form, points: ring.slice(0, 3), topM: Math.min(topM, 5) } }
      default:
        return {
          ...base,
          kind: 'tree',
          shape: { form: 'bearing', seenFrom: at, bearingDeg: turnDeg, distanceM: longM, topM, widthDeg: 20 + halfM },
        }
    }
  })

const obstacles = fc
  .array(obstacle, { minLength: 1, maxLength: 7 })
  .map((all) => all.map((one, index): Obstacle => ({ ...one, id: `o${index}` })))

/** Points on what is highest of an obstacle, closely set: edges, and the roof between ridge and eaves. */
function pointsOn({ shape }: Obstacle, apartM: number): [number, number, number][] {
  const all: [number, number, number][] = []
  const side = (a: YardPoint, aM: number, b: YardPoint, bM: number) => {
    const parts = Math.max(2, Math.ceil(Math.hypot(b.xM - a.xM, b.yM - a.yM) / apartM))
    for (let k = 0; k <= parts; k++) {
      const share = k / parts
      all.push([a.xM + share * (b.xM - a.xM), a.yM + share * (b.yM - a.yM), aM + share * (bM - aM)])
    }
  }
  if (shape.form === 'round') {
    const parts = Math.ceil((2 * Math.PI * shape.radiusM) / apartM)
    for (let k = 0; k < parts; k++) {
      const angle = (2 * Math.PI * k) / parts
      all.push([
        shape.center.xM + shape.radiusM * Math.sin(angle),
        shape.center.yM + shape.radiusM * Math.cos(angle),
        shape.topM,
      ])
    }
  } else if (shape.form === 'line') {
    for (let k = 1; k < shape.points.length; k++) side(shape.points[k - 1]!, shape.topM, shape.points[k]!, shape.topM)
  } else if (shape.form === 'bearing') {
    const b = shape.bearingDeg / DEG
    const half = shape.distanceM * Math.tan(shape.widthDeg / 2 / DEG)
    const x = shape.seenFrom.xM + shape.distanceM * Math.sin(b)
    const y = shape.seenFrom.yM + shape.distanceM * Math.cos(b)
    const [ax, ay] = [half * Math.cos(b), -half * Math.sin(b)]
    side({ xM: x - ax, yM: y - ay }, shape.topM, { xM: x + ax, yM: y + ay }, shape.topM)
  } else {
    const { ring } = shape
    const topM = shape.form === 'ring' ? shape.topM : shape.eavesM
    for (let k = 0; k < ring.length; k++) side(ring[k]!, topM, ring[(k + 1) % ring.length]!, topM)
    if (shape.form === 'gable') {
      const [a, b] = shape.ridge
      side(a, shape.ridgeM, b, shape.ridgeM)
      for (const corner of ring) {
        const near =
          Math.hypot(corner.xM - a.xM, corner.yM - a.yM) <= Math.hypot(corner.xM - b.xM, corner.yM - b.yM) ? a : b
        side(corner, topM, near, shape.ridgeM)
      }
    }
  }
  return all
}

/** Steepest point seen, degrees. */
function steepestDeg(all: readonly Obstacle[], at: YardPoint, rimM: number, apartM = 0.02): number {
  let worst = 0
  for (const one of all) {
    for (const [x, y, z] of pointsOn(one, apartM)) {
      worst = Math.max(worst, (z - rimM) / Math.hypot(x - at.xM, y - at.yM))
    }
  }
  return Math.atan(worst) * DEG
}

/** A place outside everything, so that no wall is nearer than half a metre. */
function isClear(all: readonly Obstacle[], at: YardPoint): boolean {
  return skylineAt({ obstacles: all }, at, 0.6).obstacles.every(({ nearestM }) => nearestM > 0.5)
}

describe('the skyline of any yard', () => {
  it('its worst angle is that of the steepest of thousands of points on what stands there', () => {
    fc.assert(
      fc.property(obstacles, point, metres(0.3, 2), (all, at, rimM) => {
        fc.pre(isClear(all, at))
        const { worstDeg } = skylineAt({ obstacles: all }, at, rimM)
        const sampled = steepestDeg(all, at, rimM)
        // Points lie on the edges, so that none is steeper; at half a metre two centimetres apart lose a tenth of a degree.
        expect(worstDeg).toBeGreaterThanOrEqual(sampled - 1e-9)
        expect(worstDeg).toBeLessThan(sampled + 0.15)
      }),
      { numRuns: 150, seed: 5 },
    )
  })

  it('at every bearing nothing sampled stands above it, and its highest bearing comes near the worst angle', () => {
    fc.assert(
      fc.property(obstacles, point, (all, at) => {
        fc.pre(isClear(all, at))
        const rimM = 0.9
        const fine = 7200
        const { elevationDeg, worstDeg } = skylineAt({ obstacles: all }, at, rimM, fine)
        for (const one of all) {
          for (const [x, y, z] of pointsOn(one, 0.11)) {
            const bearing = (Math.atan2(x - at.xM, y - at.yM) * DEG + 360) % 360
            const k = Math.round(bearing / (360 / fine))
            const around = Math.max(...[-1, 0, 1].map((step) => elevationDeg[(k + step + fine) % fine]!))
            const seen = Math.atan((z - rimM) / Math.hypot(x - at.xM, y - at.yM)) * DEG
            // A point between two bearings may lie at the very corner of a roof that neither of them meets.
            expect(around).toBeGreaterThan(seen - 2.5)
          }
        }
        expect(Math.max(...elevationDeg)).toBeLessThanOrEqual(worstDeg + 1e-9)
        expect(Math.max(...elevationDeg)).toBeGreaterThan(worstDeg - 1.5)
      }),
      { numRuns: 40, seed: 6 },
    )
  })

  it('turning and shifting the yard turns and shifts the skyline, and no angle changes', () => {
    fc.assert(
      fc.property(obstacles, point, fc.integer({ min: 1, max: 359 }), (all, at, turnDeg) => {
        const turn = ({ xM, yM }: YardPoint): YardPoint => ({
          xM: 11 + xM * Math.cos(turnDeg / DEG) + yM * Math.sin(turnDeg / DEG),
          yM: -23 - xM * Math.sin(turnDeg / DEG) + yM * Math.cos(turnDeg / DEG),
        })
        const turned = all.map((one): Obstacle => {
          const { shape } = one
          switch (shape.form) {
            case 'ring':
              return { ...one, shape: { ...shape, ring: shape.ring.map(turn) } }
            case 'gable':
              return {
                ...one,
                shape: { ...shape, ring: shape.ring.map(turn), ridge: [turn(shape.ridge[0]), turn(shape.ridge[1])] },
              }
            case 'round':
              return { ...one, shape: { ...shape, center: turn(shape.center) } }
            case 'line':
              return { ...one, shape: { ...shape, points: shape.points.map(turn) } }
            default:
              return {
                ...one,
                shape: { ...shape, seenFrom: turn(shape.seenFrom), bearingDeg: shape.bearingDeg + turnDeg },
              }
          }
        })
        const before = skylineAt({ obstacles: all }, at, 0.6)
        const after = skylineAt({ obstacles: turned }, turn(at), 0.6)
        expect(after.worstDeg).toBeCloseTo(before.worstDeg, 6)
        expect(after.obstacles.map(({ nearestM }) => nearestM.toFixed(6))).toEqual(
          before.obstacles.map(({ nearestM }) => nearestM.toFixed(6)),
        )
        expect(Math.abs(after.blockedShare - before.blockedShare)).toBeLessThan(0.01)
      }),
      { numRuns: 60, seed: 7 },
    )
  })

  it('raising the rim never steepens it, and a further obstacle never opens it', () => {
    fc.assert(
      fc.property(obstacles, obstacle, point, metres(0.2, 1.5), metres(0.1, 1), (all, more, at, rimM, raiseM) => {
        const low = skylineAt({ obstacles: all }, at, rimM)
        const high = skylineAt({ obstacles: all }, at, rimM + raiseM)
        const fuller = skylineAt({ obstacles: [...all, { ...more, id: 'more' }] }, at, rimM)
        expect(high.worstDeg).toBeLessThanOrEqual(low.worstDeg)
        expect(high.blockedShare).toBeLessThanOrEqual(low.blockedShare + 1e-12)
        expect(fuller.worstDeg).toBeGreaterThanOrEqual(low.worstDeg)
        expect(fuller.blockedShare).toBeGreaterThanOrEqual(low.blockedShare - 1e-12)
      }),
      { numRuns: 100, seed: 8 },
    )
  })

  it('a wall to the horizon hides half of the band below its angle: blocked share by solid angle', () => {
    // A long wall 10 m to the north, 10 m above the rim: at bearing b its elevation is atan(cos b). The share of the sky
    // that it hides is the mean over b of sin(atan(cos b)) = ∫ cos b / sqrt(1 + cos² b) db / 2π over the half turn = 1/4.
    const wall: Obstacle = {
      id: 'wall',
      kind: 'wall',
      name: '',
      shape: {
        form: 'line',
        points: [
          { xM: -1e6, yM: 10 },
          { xM: 1e6, yM: 10 },
        ],
        topM: 10.6,
      },
    }
    expect(skylineAt({ obstacles: [wall] }, { xM: 0, yM: 0 }, 0.6, 3600).blockedShare).toBeCloseTo(0.25, 3)
  })
})

describe('the best spot of any yard', () => {
  const outline = [
    { xM: 0, yM: 0 },
    { xM: 40, yM: 2 },
    { xM: 37, yM: 30 },
    { xM: 4, yM: 28 },
  ]

  it('no place of a dense search is better by more than half a degree', () => {
    fc.assert(
      fc.property(obstacles, metres(0.4, 1.6), (all, rimM) => {
        const plan: YardPlan = {
          outline,
          obstacles: all,
          hazards: [{ id: 'h', kind: 'sprinkler', name: '', at: { xM: 20, yM: 15 }, reachM: 3 }],
          slopeDeg: 2,
          gauge: null,
        }
        fc.pre(checkYard(plan).every(({ weight }) => weight !== 'fault'))
        const { spots } = bestSpots(plan, { rimM, cellM: 1 })
        let brute = Number.POSITIVE_INFINITY
        for (let xM = 0.25; xM < 40; xM += 0.5) {
          for (let yM = 0.25; yM < 30; yM += 0.5) {
            if (!mayStand(plan, xM, yM)) continue
            brute = Math.min(brute, steepestDeg(all, { xM, yM }, rimM, 0.5))
          }
        }
        fc.pre(brute < 90)
        expect(spots.length).toBeGreaterThan(0)
        const [best] = spots
        expect(mayStand(plan, best!.at.xM, best!.at.yM)).toBe(true)
        expect(steepestDeg(all, best!.at, rimM)).toBeLessThanOrEqual(brute + 0.75)
        for (const [index, spot] of spots.entries()) {
          for (const other of spots.slice(index + 1)) {
            expect(Math.hypot(spot.at.xM - other.at.xM, spot.at.yM - other.at.yM)).toBeGreaterThan(1)
          }
        }
      }),
      { numRuns: 8, seed: 9 },
    )
  })

  it('of two places equally steep, the one that sees more sky', () => {
    // Two like poles, one in the south with a second pole of the same angle behind it for half of the yard.
    const pole = (id: string, xM: number, yM: number, topM: number): Obstacle => ({
      id,
      kind: 'pole',
      name: '',
      shape: { form: 'round', center: { xM, yM }, radiusM: 0.1, topM },
    })
    const plan: YardPlan = {
      outline: [
        { xM: 0, yM: 0 },
        { xM: 40, yM: 0 },
        { xM: 40, yM: 10 },
        { xM: 0, yM: 10 },
      ],
      obstacles: [
        pole('west', -5, 5, 4),
        pole('east', 45, 5, 4),
        pole('east 2', 45, 3, 3.9),
        pole('east 3', 45, 7, 3.9),
      ],
      hazards: [],
      slopeDeg: 0,
      gauge: null,
    }
    const { spots } = bestSpots(plan, { rimM: 0.6 })
    expect(spots[0]!.at.xM).toBeLessThan(20.5)
  })

  it('says why no place is allowed', () => {
    const plan: YardPlan = {
      outline: outline.map(({ xM, yM }) => ({ xM: xM / 10, yM: yM / 10 })),
      obstacles: [],
      hazards: [{ id: 's', kind: 'sprinkler', name: '', at: { xM: 2, yM: 1.5 }, reachM: 8 }],
      slopeDeg: null,
      gauge: null,
    }
    const { spots, cells } = bestSpots(plan, { rimM: 0.6 })
    expect(spots).toEqual([])
    expect(cells.inside).toBeGreaterThan(20)
    expect(cells.nearHazard).toBe(cells.inside)
  })

  /** The conditions of a place, told by their own words: in the outline, 0.3 m from what stands, 1.5 m from roofs, beyond the sprinkler. */
  function mayStand(plan: YardPlan, xM: number, yM: number): boolean {
    let inside = true
    for (let k = 0; k < 4; k++) {
      const a = plan.outline[k]!
      const b = plan.outline[(k + 1) % 4]!
      if ((b.xM - a.xM) * (yM - a.yM) - (b.yM - a.yM) * (xM - a.xM) < 0) inside = false
    }
    if (!inside || Math.hypot(xM - 20, yM - 15) < 4) return false
    for (const one of plan.obstacles) {
      if (one.shape.form === 'bearing') continue
      const needed = one.kind === 'house' || one.kind === 'shed' ? 1.5 : 0.3
      const { nearestM } = skylineAt({ obstacles: [one] }, { xM, yM }, 0.6).obstacles[0]!
      if (nearestM < needed) return false
    }
    return true
  }
})
