/**
 * A straight line through positions over time that a few stray ones do not bend: Huber's M-estimate by iteratively
 * reweighted least squares, the scale anew in each round from the median residual. One coordinate or two; with two, one
 * weight for both. Source: [Huber1981]; checked against R's MASS::rlm in test/published/robustLine.test.ts.
 */
import { ScienceError } from '../error.ts'

export interface RobustLine {
  /** Position at time 0 and movement per unit of time, one number per coordinate. */
  start: number[]
  slope: number[]
  /** Weights 0 to 1 of the points. */
  weights: Float64Array
  /** Robust spread of a residual, per coordinate. */
  scale: number
  rounds: number
}

const tuning = 1.345
/** Median of |residual| over its standard deviation: normal in one coordinate, Rayleigh in two. */
const medianShare = [0.6745, Math.sqrt(2 * Math.LN2)]
const mostRounds = 200
const tolerance = 1e-10

/**
 * @param times        n times, at least two of them different
 * @param positions    one or two coordinates, n numbers each
 * @param leastScale   the scale is never taken to be smaller, so that points that lie well by chance are not trusted too far
 * @throws {ScienceError} SHAPES_DIFFER; TOO_FEW_POINTS below 2; SYSTEM_SINGULAR where all times are one
 */
export function robustLine(
  times: ArrayLike<number>,
  positions: readonly ArrayLike<number>[],
  leastScale = 0,
): RobustLine {
  const count = times.length
  if (positions.length < 1 || positions.length > 2 || positions.some(({ length }) => length !== count)) {
    throw new ScienceError('SHAPES_DIFFER', `${count} times need one or two coordinates of as many positions.`)
  }
  if (count < 2) throw new ScienceError('TOO_FEW_POINTS', `A line needs 2 points, not ${count}.`)
  const share = medianShare[positions.length - 1] as number
  const weights = new Float64Array(count).fill(1)
  let line = weightedLine(times, positions, weights)
  let scale = leastScale
  let rounds = 0
  for (; rounds < mostRounds; rounds++) {
    const residuals = residualsOf(times, positions, line)
    scale = Math.max(leastScale, median(residuals) / share)
    const limit = tuning * scale * (positions.length === 1 ? 1 : Math.SQRT2)
    for (let index = 0; index < count; index++) {
      const residual = residuals[index] as number
      weights[index] = residual <= limit ? 1 : limit / residual
    }
    const next = weightedLine(times, positions, weights)
    const change = Math.max(...next.slope.map((slope, axis) => Math.abs(slope - (line.slope[axis] as number))))
    const size = Math.max(...next.slope.map(Math.abs), 1e-12)
    line = next
    if (change <= tolerance * size) break
  }
  return { ...line, weights, scale, rounds }
}

function weightedLine(times: ArrayLike<number>, positions: readonly ArrayLike<number>[], weights: Float64Array) {
  let sum = 0
  let timeSum = 0
  for (let index = 0; index < weights.length; index++) {
    sum += weights[index] as number
    timeSum += (weights[index] as number) * (times[index] as number)
  }
  const meanTime = timeSum / sum
  let spread = 0
  for (let index = 0; index < weights.length; index++) {
    spread += (weights[index] as number) * ((times[index] as number) - meanTime) ** 2
  }
  if (!(spread > 0)) throw new ScienceError('SYSTEM_SINGULAR', 'All points have one time: they tell of no movement.')
  const start: number[] = []
  const slope: number[] = []
  for (const values of positions) {
    let mean = 0
    let product = 0
    for (let index = 0; index < weights.length; index++) {
      mean += ((weights[index] as number) * (values[index] as number)) / sum
      product += (weights[index] as number) * ((times[index] as number) - meanTime) * (values[index] as number)
    }
    slope.push(product / spread)
    start.push(mean - (product / spread) * meanTime)
  }
  return { start, slope }
}

function residualsOf(
  times: ArrayLike<number>,
  positions: readonly ArrayLike<number>[],
  { start, slope }: { start: number[]; slope: number[] },
): Float64Array {
  return Float64Array.from({ length: times.length }, (_, index) =>
    Math.hypot(
      ...positions.map(
        (values, axis) =>
          (values[index] as number) - (start[axis] as number) - (slope[axis] as number) * (times[index] as number),
      ),
    ),
  )
}

function median(values: Float64Array): number {
  const sorted = values.slice().sort()
  const middle = sorted.length >> 1
  return sorted.length % 2 === 1
    ? (sorted[middle] as number)
    : ((sorted[middle - 1] as number) + (sorted[middle] as number)) / 2
}
