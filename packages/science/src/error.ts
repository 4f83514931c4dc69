/** A broken promise between our own functions. Trouble with a user's input is returned as a problem, never thrown. */
export type ScienceErrorCode =
  | 'SHAPES_DIFFER'
  | 'SITES_COINCIDE'
  | 'SYSTEM_SINGULAR'
  | 'TOO_FEW_POINTS'
  | 'OUT_OF_DOMAIN'
  | 'NOT_CONVERGED'

export class ScienceError extends Error {
  readonly code: ScienceErrorCode

  constructor(code: ScienceErrorCode, message: string) {
    super(`${code}: ${message}`)
    this.name = 'ScienceError'
    this.code = code
  }
}
