/** Thiessen's areal weights, kept for comparison and teaching: each gauge speaks for the part of an area nearest to it. */

/**
 * Share of a polygon that lies nearer to each gauge than to any other, by clipping the ring at the perpendicular
 * bisectors. Exact for one ring without holes, convex or not (a part cut in two stays joined by a line of no area).
 * @param gauges  n places; of gauges at one place the first takes the share
 * @param ring    corners x, y in turn
 * @returns Float64Array(n), summing to 1. Time O(n² · corners). Source: [Thiessen1911].
 */
export function thiessenWeights(
  gauges: { xM: ArrayLike<number>; yM: ArrayLike<number> },
  ring: ArrayLike<number>,
): Float64Array {
  const n = gauges.xM.length
  const weights = new Float64Array(n)
  let total = 0
  for (let i = 0; i < n; i++) {
    let part = Array.from(ring)
    for (let j = 0; j < n && part.length > 0; j++) {
      const dx = gauges.xM[j]! - gauges.xM[i]!
      const dy = gauges.yM[j]! - gauges.yM[i]!
      if (dx === 0 && dy === 0) {
        if (j < i) part = []
        continue
      }
      const limit = 0.5 * (gauges.xM[j]! ** 2 + gauges.yM[j]! ** 2 - gauges.xM[i]! ** 2 - gauges.yM[i]! ** 2)
      part = clip(part, dx, dy, limit)
    }
    weights[i] = Math.abs(signedArea(part))
    total += weights[i]!
  }
  for (let i = 0; i < n; i++) weights[i]! /= total
  return weights
}

/** The part of a ring where dx · x + dy · y <= limit. */
function clip(ring: number[], dx: number, dy: number, limit: number): number[] {
  const out: number[] = []
  const corners = ring.length / 2
  for (let k = 0; k < corners; k++) {
    const next = (k + 1) % corners
    const x0 = ring[2 * k]!
    const y0 = ring[2 * k + 1]!
    const x1 = ring[2 * next]!
    const y1 = ring[2 * next + 1]!
    const over0 = dx * x0 + dy * y0 - limit
    const over1 = dx * x1 + dy * y1 - limit
    if (over0 <= 0) out.push(x0, y0)
    if (over0 <= 0 !== over1 <= 0) {
      const t = over0 / (over0 - over1)
      out.push(x0 + t * (x1 - x0), y0 + t * (y1 - y0))
    }
  }
  return out
}

function signedArea(ring: number[]): number {
  let sum = 0
  const corners = ring.length / 2
  for (let k = 0; k < corners; k++) {
    const next = (k + 1) % corners
    sum += ring[2 * k]! * ring[2 * next + 1]! - ring[2 * next]! * ring[2 * k + 1]!
  }
  return 0.5 * sum
}
