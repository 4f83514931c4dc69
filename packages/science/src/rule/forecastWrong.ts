/**
 * How many wrong readings the coming mornings will let through, from mornings that were. Two things scatter: which readings
 * turn out wrong, by their own odds; and the mornings themselves, for a wet one lets more through than a dry one. Days in a
 * row are alike, so that whole weeks are taken as the unit that repeats. Common practice (moments, block by block).
 */
import { ScienceError } from '../error.ts'
import { countRange } from './countRange.ts'

export interface WrongForecast {
  expected: number
  /** P10 and P90, whole numbers. */
  low: number
  high: number
}

const BLOCK_MORNINGS = 7
/** Fewer mornings than this are not cut into weeks. */
const LEAST_FOR_BLOCKS = 28

/**
 * @param expectedWrong  of each morning that was, in order
 * @param varianceWrong  of each, given its odds
 * @param ahead          how many mornings to look ahead
 * @throws {ScienceError} SHAPES_DIFFER; TOO_FEW_POINTS without a morning
 */
export function forecastWrong(
  expectedWrong: ArrayLike<number>,
  varianceWrong: ArrayLike<number>,
  ahead: number,
): WrongForecast {
  const mornings = expectedWrong.length
  if (varianceWrong.length !== mornings) {
    throw new ScienceError('SHAPES_DIFFER', `${mornings} expected numbers and ${varianceWrong.length} variances`)
  }
  if (mornings === 0) throw new ScienceError('TOO_FEW_POINTS', 'no morning to look back on')
  let sum = 0
  let ownVariance = 0
  for (let i = 0; i < mornings; i++) {
    sum += expectedWrong[i]!
    ownVariance += varianceWrong[i]!
  }
  const expected = (sum * ahead) / mornings
  const between = varianceAMorning(expectedWrong)
  // The mornings to come scatter about the long mean, and the mean of those that were is itself not sure.
  const variance = (ownVariance * ahead) / mornings + between * ahead * (1 + ahead / mornings)
  return { expected, ...countRange(expected, variance) }
}

/** Variance between mornings, a morning's share of the variance between weeks. 0 where there is only one. */
function varianceAMorning(expectedWrong: ArrayLike<number>): number {
  const size = expectedWrong.length >= LEAST_FOR_BLOCKS ? BLOCK_MORNINGS : 1
  const blocks = Math.floor(expectedWrong.length / size)
  if (blocks < 2) return 0
  const sums = new Float64Array(blocks)
  for (let i = 0; i < blocks * size; i++) sums[Math.floor(i / size)]! += expectedWrong[i]!
  const mean = sums.reduce((a, b) => a + b, 0) / blocks
  const squares = sums.reduce((all, one) => all + (one - mean) ** 2, 0)
  return squares / (blocks - 1) / size
}
