/**
 * Minimum of a function of a few variables without derivatives: the simplex method with dimension-adaptive constants.
 * Deterministic. Source: [Nelder1965], constants of [Gao2012].
 */

export interface MinimiseAsk {
  /** First step along each variable, Float64Array(n) or n numbers. */
  steps: ArrayLike<number>
  mostEvaluations: number
  /** Stop when the values at all corners differ by less. */
  tolerance: number
}

export interface Minimum {
  at: Float64Array
  value: number
  evaluations: number
}

/** @param f  must not keep the array it is given; NaN counts as +Infinity */
export function minimise(f: (at: Float64Array) => number, start: ArrayLike<number>, ask: MinimiseAsk): Minimum {
  const n = start.length
  const expand = 1 + 2 / n
  const contract = 0.75 - 0.5 / n
  const shrink = 1 - 1 / n
  let evaluations = 0
  const valueAt = (at: Float64Array): number => {
    evaluations++
    const value = f(at)
    return Number.isNaN(value) ? Number.POSITIVE_INFINITY : value
  }
  const corners: { at: Float64Array; value: number }[] = []
  for (let k = 0; k <= n; k++) {
    const at = Float64Array.from(start)
    if (k > 0) at[k - 1]! += ask.steps[k - 1]!
    corners.push({ at, value: valueAt(at) })
  }
  const middle = new Float64Array(n)
  const along = (worst: Float64Array, factor: number): { at: Float64Array; value: number } => {
    const at = new Float64Array(n)
    for (let i = 0; i < n; i++) at[i] = middle[i]! + factor * (worst[i]! - middle[i]!)
    return { at, value: valueAt(at) }
  }
  const byValue = (a: { value: number }, b: { value: number }): number => a.value - b.value
  corners.sort(byValue)
  while (evaluations < ask.mostEvaluations && corners[n]!.value - corners[0]!.value > ask.tolerance) {
    middle.fill(0)
    for (let k = 0; k < n; k++) for (let i = 0; i < n; i++) middle[i]! += corners[k]!.at[i]! / n
    const worst = corners[n]!
    const mirrored = along(worst.at, -1)
    if (mirrored.value < corners[0]!.value) {
      const further = along(worst.at, -expand)
      corners[n] = further.value < mirrored.value ? further : mirrored
    } else if (mirrored.value < corners[n - 1]!.value) {
      corners[n] = mirrored
    } else {
      const outside = mirrored.value < worst.value
      const nearer = along(worst.at, outside ? -contract : contract)
      if (nearer.value < (outside ? mirrored.value : worst.value)) corners[n] = nearer
      else {
        const best = corners[0]!.at
        for (let k = 1; k <= n; k++) {
          const corner = corners[k]!
          for (let i = 0; i < n; i++) corner.at[i] = best[i]! + shrink * (corner.at[i]! - best[i]!)
          corner.value = valueAt(corner.at)
        }
      }
    }
    corners.sort(byValue)
  }
  return { at: corners[0]!.at, value: corners[0]!.value, evaluations }
}
