/**
 * The weather's mood day by day: a Markov chain of five states whose chances swing with the season. The figures are
 * chosen for a middle-latitude upland with rain on about one day in three; they are not fitted to any real network.
 */
import type { Random } from '../random/random.ts'

export const synopticStates = ['settled', 'westerly', 'low', 'showery', 'thundery'] as const
export type SynopticState = (typeof synopticStates)[number]

/** Chances of tomorrow's state (in the order of `synopticStates`) by today's, in mid-winter and in mid-summer. */
const winterChances: Record<SynopticState, readonly number[]> = {
  settled: [0.66, 0.21, 0.07, 0.06, 0],
  westerly: [0.24, 0.44, 0.11, 0.21, 0],
  low: [0.26, 0.22, 0.34, 0.18, 0],
  showery: [0.42, 0.27, 0.08, 0.23, 0],
  thundery: [0.5, 0.3, 0.1, 0.1, 0],
}
const summerChances: Record<SynopticState, readonly number[]> = {
  settled: [0.66, 0.11, 0.04, 0.06, 0.13],
  westerly: [0.36, 0.32, 0.06, 0.18, 0.08],
  low: [0.3, 0.16, 0.28, 0.18, 0.08],
  showery: [0.44, 0.2, 0.05, 0.21, 0.1],
  thundery: [0.37, 0.22, 0.07, 0.12, 0.22],
}

/** How far into summer a day is: 0 in mid-January, 1 in mid-July. */
export function summerShare(dayOfYear: number): number {
  return 0.5 - 0.5 * Math.cos((2 * Math.PI * (dayOfYear - 15)) / 365.25)
}

export function nextState(today: SynopticState, summer: number, random: Random): SynopticState {
  const chances = winterChances[today].map((winter, index) => winter + (summerChances[today][index]! - winter) * summer)
  return synopticStates[random.weighted(chances)]!
}
