import type { MeasuredRun } from './runMeasured.ts'

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

/** Time by the clock, processor time and peak memory of a run; `more` stands right after the time. */
export function measured(what: string, run: MeasuredRun, aim: string, more = ''): SpeedLine {
  const parts = [`${run.seconds.toFixed(1)} s${more}`]
  if (run.cpuSeconds !== null) parts.push(`${run.cpuSeconds.toFixed(1)} s of processor`)
  if (run.peakMb !== null) parts.push(`${Math.round(run.peakMb)} MB`)
  return { what, figure: parts.join(', '), aim }
}
