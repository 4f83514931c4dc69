/** One measured thing of the speed bench. */
export interface SpeedLine {
  what: string
  /** As printed, with its unit. */
  figure: string
  aim: string
}

/** What was not measured and why. */
export function skipped(what: string, why: string): SpeedLine {
  return { what, figure: `skipped: ${why}`, aim: '' }
}
