/** The room that a small kriging system is put into, laid out alike for both kernels of smallSystem.ts. */

/** Neighbours of one system at most. */
export const mostInSystem = 60
/** Numbers from one row of the room to the next. */
export const systemStride = 64

/** Columns are worked on in fours: three numbers beyond the last row may be written over. */
export const roomLength = mostInSystem * systemStride + 4
/** Least variance left to a neighbour by those before it: keeps a system of rounded correlations solvable. */
export const leastPivot = 1e-4

/** One system at a time, shared by all callers of a thread: fill the room, solve, read the answer. */
export interface SmallSystem {
  /**
   * Row a, at a × systemStride: in column a the neighbour's own variance, in column b > a its covariance with neighbour
   * b, in column `count` its covariance with the place, in column `count` + 1 its value less the mean. What stands
   * elsewhere does not matter, and up to three numbers after each row are written over.
   */
  room: Float64Array
  /**
   * Factor the covariances into UᵀU and solve for both sides: on return column `count` holds U⁻ᵀ × covariance, the next
   * U⁻ᵀ × value. Their products add up to the kriging estimate less the mean, the squares of the first to the variance
   * explained. The rest of the room is then of no meaning. A pivot below 1e-4 counts as that, so that a system of
   * rounded correlations stays solvable.
   * @param count  at most mostInSystem
   * @remarks Time count³ / 6 multiplications. Every sum runs over the rows in order: to the last bit the answer of the
   *   plain triple loop, whichever kernel runs.
   */
  solve: (count: number) => void
}
