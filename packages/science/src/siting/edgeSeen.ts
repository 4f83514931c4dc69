/**
 * How high one edge stands above the rim, exactly. A straight edge and the eye span a plane, so that the tangent of its
 * elevation is a plain ratio at every bearing; over the edge it has one stationary point. A round is seen at the near side
 * of its disc. Tangents, not angles, within loops: a tangent of 0 or less is no obstacle.
 */

/** Tangent of the highest elevation of a straight edge, and the horizontal distance there, written to `out`: no allocation. */
export function steepestOfStraight(
  edges: Float64Array,
  start: number,
  eyeX: number,
  eyeY: number,
  rimM: number,
  out: { tangent: number; distanceM: number; bearingRad: number },
): void {
  const px = edges[start]! - eyeX
  const py = edges[start + 1]! - eyeY
  const pz = edges[start + 2]! - rimM
  const dx = edges[start + 3]! - eyeX - px
  const dy = edges[start + 4]! - eyeY - py
  const dz = edges[start + 5]! - rimM - pz
  const a = px * px + py * py
  const b = px * dx + py * dy
  const c = dx * dx + dy * dy
  // d/ds of (pz + s dz) / sqrt(a + 2 b s + c s²) is zero where s = (dz a - pz b) / (pz c - dz b).
  const denominator = pz * c - dz * b
  const still = denominator === 0 ? 0 : (dz * a - pz * b) / denominator
  out.tangent = Number.NEGATIVE_INFINITY
  for (let trial = 0; trial < 3; trial++) {
    const s = trial === 0 ? 0 : trial === 1 ? 1 : Math.min(1, Math.max(0, still))
    const x = px + s * dx
    const y = py + s * dy
    const distance = Math.sqrt(x * x + y * y)
    const tangent = (pz + s * dz) / distance
    if (tangent > out.tangent) {
      out.tangent = tangent
      out.distanceM = distance
      out.bearingRad = Math.atan2(x, y)
    }
  }
}

/** The same for a round: nearest point of its disc. An eye within it sees it everywhere: an infinite tangent. */
export function steepestOfRound(
  rounds: Float64Array,
  start: number,
  eyeX: number,
  eyeY: number,
  rimM: number,
  out: { tangent: number; distanceM: number; bearingRad: number },
): void {
  const x = rounds[start]! - eyeX
  const y = rounds[start + 1]! - eyeY
  const distance = Math.max(0, Math.sqrt(x * x + y * y) - rounds[start + 2]!)
  const aboveM = rounds[start + 3]! - rimM
  out.tangent = aboveM <= 0 ? Number.NEGATIVE_INFINITY : aboveM / distance
  out.distanceM = distance
  out.bearingRad = Math.atan2(x, y)
}

/**
 * Raises `tangents` (at bearings 2π(k + offset)/n) to where one straight edge stands higher. Only bearings that the edge
 * spans are touched, with one division each.
 */
export function raiseByStraight(
  edges: Float64Array,
  start: number,
  eyeX: number,
  eyeY: number,
  rimM: number,
  tangents: Float64Array,
  offset: number,
  owner: Int32Array | null,
  ownerId: number,
): void {
  const px = edges[start]! - eyeX
  const py = edges[start + 1]! - eyeY
  const pz = edges[start + 2]! - rimM
  const qx = edges[start + 3]! - eyeX
  const qy = edges[start + 4]! - eyeY
  const qz = edges[start + 5]! - rimM
  if (pz <= 0 && qz <= 0) return
  const count = tangents.length
  const step = (2 * Math.PI) / count
  const first = Math.atan2(px, py)
  let span = Math.atan2(qx, qy) - first
  if (span > Math.PI) span -= 2 * Math.PI
  if (span < -Math.PI) span += 2 * Math.PI
  const from = span >= 0 ? first : first + span
  const to = span >= 0 ? first + span : first
  const dx = qx - px
  const dy = qy - py
  const dz = qz - pz
  for (let k = Math.ceil(from / step - offset); k <= Math.floor(to / step - offset); k++) {
    const bearing = (k + offset) * step
    const sin = Math.sin(bearing)
    const cos = Math.cos(bearing)
    const across = dx * cos - dy * sin
    if (across === 0) continue
    const s = -(px * cos - py * sin) / across
    const distance = (px + s * dx) * sin + (py + s * dy) * cos
    if (distance <= 0) continue
    const tangent = (pz + s * dz) / distance
    const slot = ((k % count) + count) % count
    if (tangent > tangents[slot]!) {
      tangents[slot] = tangent
      if (owner) owner[slot] = ownerId
    }
  }
}

/** The same for a round. */
export function raiseByRound(
  rounds: Float64Array,
  start: number,
  eyeX: number,
  eyeY: number,
  rimM: number,
  tangents: Float64Array,
  offset: number,
  owner: Int32Array | null,
  ownerId: number,
): void {
  const aboveM = rounds[start + 3]! - rimM
  if (aboveM <= 0) return
  const x = rounds[start]! - eyeX
  const y = rounds[start + 1]! - eyeY
  const radius = rounds[start + 2]!
  const away = Math.sqrt(x * x + y * y)
  const count = tangents.length
  const step = (2 * Math.PI) / count
  const middle = Math.atan2(x, y)
  const half = away <= radius ? Math.PI : Math.asin(radius / away)
  const last =
    away <= radius
      ? Math.ceil((middle - half) / step - offset) + count - 1
      : Math.floor((middle + half) / step - offset)
  for (let k = Math.ceil((middle - half) / step - offset); k <= last; k++) {
    const turned = (k + offset) * step - middle
    const sideways = away * Math.sin(turned)
    const distance = Math.max(
      0,
      away * Math.cos(turned) - Math.sqrt(Math.max(0, radius * radius - sideways * sideways)),
    )
    const tangent = away <= radius ? Number.POSITIVE_INFINITY : aboveM / distance
    const slot = ((k % count) + count) % count
    if (tangent > tangents[slot]!) {
      tangents[slot] = tangent
      if (owner) owner[slot] = ownerId
    }
  }
}
