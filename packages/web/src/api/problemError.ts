import type { Problem } from '@gaugewright/contract'

/** Thrown by the client when the desk answered with a problem, or did not answer; screens show `problem`. */
export class ProblemError extends Error {
  readonly problem: Problem
  constructor(problem: Problem) {
    super(`${problem.code}: ${problem.seen}. ${problem.advice}`)
    this.name = 'ProblemError'
    this.problem = problem
  }
}

/** The problem in any error, so that a screen can always show one. */
export function problemFrom(error: unknown): Problem {
  if (error instanceof ProblemError) return error.problem
  return { code: 'SCREEN_FAILED', seen: error instanceof Error ? error.message : String(error), advice: '' }
}
