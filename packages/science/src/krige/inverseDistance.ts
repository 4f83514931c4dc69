/** Inverse-distance weighting, kept for comparison: it knows nothing of how rain behaves, and gives no uncertainty. */
import { NearestIndex } from '../space/nearest.ts'
import { checkShapes, type MeasuredPoints, type Targets } from './krigingSystem.ts'

/**
 * @param ask.power    weights are 1 / distance to this power; 2 is usual
 * @param ask.nearest  use only this many nearest gauges; all when not given
 * @returns amountMm, Float64Array(m); exactly the gauge's own amount (the mean of those there) on top of a gauge
 * @throws {ScienceError} SHAPES_DIFFER; TOO_FEW_POINTS. Source: [Shepard1968].
 */
export function inverseDistance(
  gauges: MeasuredPoints,
  targets: Targets,
  ask: { power: number; nearest?: number },
): Float64Array {
  const n = checkShapes(gauges, targets)
  const size = Math.min(n, ask.nearest ?? n)
  const index = size < n ? new NearestIndex(gauges.xM, gauges.yM) : undefined
  const chosen = Int32Array.from({ length: size }, (_, k) => k)
  return Float64Array.from({ length: targets.xM.length }, (_, t) => {
    const x = targets.xM[t]!
    const y = targets.yM[t]!
    if (index) index.nearestInto(x, y, size, chosen)
    let weights = 0
    let sum = 0
    let onTop = 0
    let sumOnTop = 0
    for (let k = 0; k < size; k++) {
      const j = chosen[k]!
      const squared = (gauges.xM[j]! - x) ** 2 + (gauges.yM[j]! - y) ** 2
      if (squared === 0) {
        onTop++
        sumOnTop += gauges.amountMm[j]!
      } else {
        const weight = squared ** (-0.5 * ask.power)
        weights += weight
        sum += weight * gauges.amountMm[j]!
      }
    }
    return onTop > 0 ? sumOnTop / onTop : sum / weights
  })
}
