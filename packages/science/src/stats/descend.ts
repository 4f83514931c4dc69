/**
 * Minimum of a smooth function of a few variables: quasi-Newton steps (BFGS) with slopes by forward differences and a
 * backtracking line search. Deterministic; much fewer calls than a simplex. Source: [Nocedal2006] ch. 6.
 */
export interface DescendAsk {
  /** Size of a typical change of each variable; also scales the differences. */
  scales: ArrayLike<number>
  mostSteps: number
  /** Stop when a step gains less. */
  tolerance: number
  /** Step of the differences, in scales; 0.02 when not given. */
  difference?: number
}

export interface Descended {
  at: Float64Array
  value: number
  evaluations: number
}

/** @param f  must not keep the array it is given; a value that is not finite is stepped back from */
export function descend(f: (at: Float64Array) => number, start: ArrayLike<number>, ask: DescendAsk): Descended {
  const n = start.length
  const { scales } = ask
  let evaluations = 0
  // Everything below lives on scaled variables u = x / scale.
  const at = new Float64Array(n)
  const valueAt = (u: Float64Array): number => {
    evaluations++
    for (let i = 0; i < n; i++) at[i] = u[i]! * scales[i]!
    const value = f(at)
    return Number.isFinite(value) ? value : 1e30
  }
  const step = ask.difference ?? 0.02
  const slopeAt = (u: Float64Array, value: number, out: Float64Array): void => {
    for (let i = 0; i < n; i++) {
      const kept = u[i]!
      u[i] = kept + step
      const up = valueAt(u)
      u[i] = kept
      out[i] = up > 1e29 ? 0 : (up - value) / step
    }
  }
  let u = Float64Array.from({ length: n }, (_, i) => start[i]! / scales[i]!)
  let value = valueAt(u)
  let slope = new Float64Array(n)
  slopeAt(u, value, slope)
  const inverse = new Float64Array(n * n)
  const reset = (): void => {
    inverse.fill(0)
    let length = 0
    for (let i = 0; i < n; i++) length += slope[i]! * slope[i]!
    for (let i = 0; i < n; i++) inverse[i * n + i] = 1 / Math.max(1, Math.sqrt(length))
  }
  reset()
  for (let turn = 0; turn < ask.mostSteps; turn++) {
    const direction = new Float64Array(n)
    let along = 0
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) direction[i]! -= inverse[i * n + j]! * slope[j]!
      along += direction[i]! * slope[i]!
    }
    if (!(along < 0)) break
    let length = 1
    let next = u
    let nextValue = value
    let found = false
    for (let back = 0; back < 12; back++, length *= 0.4) {
      next = Float64Array.from(u, (v, i) => v + length * direction[i]!)
      nextValue = valueAt(next)
      if (nextValue < value + 1e-4 * length * along) {
        found = true
        break
      }
    }
    if (!found) break
    const gain = value - nextValue
    const nextSlope = new Float64Array(n)
    slopeAt(next, nextValue, nextSlope)
    update(inverse, n, u, next, slope, nextSlope)
    u = next
    value = nextValue
    slope = nextSlope
    if (gain < ask.tolerance) break
  }
  return { at: Float64Array.from(u, (v, i) => v * scales[i]!), value, evaluations }
}

/** BFGS update of the inverse curvature. */
function update(
  inverse: Float64Array,
  n: number,
  from: Float64Array,
  to: Float64Array,
  slopeFrom: Float64Array,
  slopeTo: Float64Array,
): void {
  const s = Float64Array.from(to, (v, i) => v - from[i]!)
  const y = Float64Array.from(slopeTo, (v, i) => v - slopeFrom[i]!)
  let sy = 0
  for (let i = 0; i < n; i++) sy += s[i]! * y[i]!
  if (!(sy > 1e-12)) return
  const hy = new Float64Array(n)
  let yhy = 0
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) hy[i]! += inverse[i * n + j]! * y[j]!
    yhy += hy[i]! * y[i]!
  }
  const factor = (sy + yhy) / (sy * sy)
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) inverse[i * n + j]! += factor * s[i]! * s[j]! - (hy[i]! * s[j]! + s[i]! * hy[j]!) / sy
}
