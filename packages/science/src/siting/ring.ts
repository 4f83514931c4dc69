/** Closed rings on a plane: area, inside or not, distance to the border. Time O(corners). */
import type { YardPoint, YardRing } from './yard.ts'

/** Never negative, whichever way round the ring goes. Shoelace formula. */
export function ringAreaM2(ring: YardRing): number {
  let twice = 0
  for (let at = 0; at < ring.length; at++) {
    const a = ring[at]!
    const b = ring[(at + 1) % ring.length]!
    twice += a.xM * b.yM - b.xM * a.yM
  }
  return Math.abs(twice) / 2
}

/** Even-odd rule; a point on the border may fall either way. */
export function isInRing(ring: YardRing, { xM, yM }: YardPoint): boolean {
  let inside = false
  for (let at = 0, before = ring.length - 1; at < ring.length; before = at++) {
    const a = ring[at]!
    const b = ring[before]!
    if (a.yM > yM !== b.yM > yM && xM < ((b.xM - a.xM) * (yM - a.yM)) / (b.yM - a.yM) + a.xM) inside = !inside
  }
  return inside
}

/** Whether two sides that do not meet at a corner cross or touch. */
export function ringCrossesItself(ring: YardRing): boolean {
  const count = ring.length
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      if (j === i + 1 || (i === 0 && j === count - 1)) continue
      if (sidesCross(ring[i]!, ring[(i + 1) % count]!, ring[j]!, ring[(j + 1) % count]!)) return true
    }
  }
  return false
}

/** Horizontal distance from a point to a straight side. */
export function distanceToSideM(point: YardPoint, a: YardPoint, b: YardPoint): number {
  const dx = b.xM - a.xM
  const dy = b.yM - a.yM
  const squared = dx * dx + dy * dy
  const along = squared === 0 ? 0 : ((point.xM - a.xM) * dx + (point.yM - a.yM) * dy) / squared
  const at = Math.min(1, Math.max(0, along))
  return Math.hypot(a.xM + at * dx - point.xM, a.yM + at * dy - point.yM)
}

function sidesCross(a: YardPoint, b: YardPoint, c: YardPoint, d: YardPoint): boolean {
  const turn = (p: YardPoint, q: YardPoint, r: YardPoint) =>
    Math.sign((q.xM - p.xM) * (r.yM - p.yM) - (q.yM - p.yM) * (r.xM - p.xM))
  const [abc, abd, cda, cdb] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)]
  if (abc !== abd && cda !== cdb) return true
  const within = (p: YardPoint, q: YardPoint, r: YardPoint) =>
    Math.min(p.xM, q.xM) <= r.xM &&
    r.xM <= Math.max(p.xM, q.xM) &&
    Math.min(p.yM, q.yM) <= r.yM &&
    r.yM <= Math.max(p.yM, q.yM)
  return (
    (abc === 0 && within(a, b, c)) ||
    (abd === 0 && within(a, b, d)) ||
    (cda === 0 && within(c, d, a)) ||
    (cdb === 0 && within(c, d, b))
  )
}
