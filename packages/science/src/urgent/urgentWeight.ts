/**
 * What a report would change for a warning: the desk's order. Its level counts most, by how likely it is so; it counts less
 * the longer ago it was seen (half after an hour; still going on, half as fast) and where the same storm has already been
 * passed on at this level or a graver one, since the warning desk then knows. Common practice; no number of it is a
 * probability.
 */
import type { SeverityLevel } from './severity.ts'
import { severityOrder } from './severity.ts'

export interface UrgentWeightAsk {
  level: SeverityLevel
  /** Of the severe threshold, where measured. */
  ratio: number | null
  /** Odds that it is so as told. */
  odds: number
  ageMinutes: number
  isGoingOn: boolean
  /** Gravest level of the same storm that was passed on; null where none was. */
  passedOnLevel: SeverityLevel | null
}

const levelWeights: Record<SeverityLevel, number> = { below: 1, near: 3, severe: 10, significant: 30 }
const halfLifeMinutes = 60
const knownShare = 0.35

/** @returns above 0; grows with level, ratio and odds, falls with age */
export function urgentWeight(ask: UrgentWeightAsk): number {
  const size = ask.ratio === null ? 1 : 1 + 0.25 * Math.tanh(Math.log(Math.max(ask.ratio, 0.05)))
  const halfLife = halfLifeMinutes * (ask.isGoingOn ? 2 : 1)
  const fresh = 2 ** (-Math.max(0, ask.ageMinutes) / halfLife)
  const isKnown =
    ask.passedOnLevel !== null && severityOrder.indexOf(ask.passedOnLevel) >= severityOrder.indexOf(ask.level)
  return levelWeights[ask.level] * size * ask.odds * fresh * (isKnown ? knownShare : 1)
}
