/** Several runs of the same thing, as one figure. */
import type { MeasuredRun } from './runMeasured.ts'

export interface Timing {
  seconds: number
  cpuSeconds: number | null
}

/** Middle value of a few figures; the mean of the two middle ones where their number is even. */
export function median(figures: readonly number[]): number {
  const sorted = [...figures].sort((a, b) => a - b)
  const half = sorted.length >> 1
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2
}

/** Median by the clock and its range, then the median of processor time. */
export function wordTimings(timings: readonly Timing[]): string {
  const seconds = timings.map((timing) => timing.seconds)
  const clock = `${inSeconds(median(seconds))} s`
  const range = seconds.length < 2 ? '' : ` (${inSeconds(Math.min(...seconds))} to ${inSeconds(Math.max(...seconds))})`
  const cpu = timings.flatMap((timing) => (timing.cpuSeconds === null ? [] : [timing.cpuSeconds]))
  return `${clock}${range}${cpu.length === 0 ? '' : `, ${inSeconds(median(cpu))} s of processor`}`
}

export function inSeconds(seconds: number): string {
  return seconds < 10 ? seconds.toFixed(2) : seconds < 100 ? seconds.toFixed(1) : seconds.toFixed(0)
}

/** What a reference program measured of its own work: a line of word, seconds by the clock, seconds of processor. */
export function ownTiming(run: MeasuredRun, word: string): Timing {
  const found = new RegExp(`^${word} ([\\d.e-]+) ([\\d.e-]+)`, 'm').exec(run.stdout)
  if (found === null) throw new Error(run.failure ?? `the reference program said nothing of "${word}"`)
  return { seconds: Number(found[1]), cpuSeconds: Number(found[2]) }
}
