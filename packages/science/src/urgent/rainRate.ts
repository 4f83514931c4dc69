/**
 * Rain rate, its usual classes, and how it stands against set guidance amounts (the rain over a duration that brings small
 * streams to bankfull, or what the office chooses). Amounts in whole micrometres, rates in mm/h.
 */
import { ScienceError } from '../error.ts'

export interface GuidanceAmount {
  minutes: number
  amountUm: number
}

export interface AgainstGuidance {
  /** Reported over guidance: 1 is at it. */
  ratio: number
  /** Duration that gives the ratio: one of the guidance's, or the report's own, interpolated. */
  minutes: number
  guidanceUm: number
}

/** @throws {ScienceError} OUT_OF_DOMAIN unless minutes are above 0 */
export function rateMmPerH(amountUm: number, minutes: number): number {
  if (!(minutes > 0)) throw new ScienceError('OUT_OF_DOMAIN', `An amount over ${minutes} minutes has no rate.`)
  return (0.06 * amountUm) / minutes
}

/** Light to heavy as in the [AMSGlossary] (up to 0.10 in/h, up to 0.30 in/h, above); violent from 50 mm/h as in [WMO8]. */
export function rainIntensity(mmPerH: number): 'light' | 'moderate' | 'heavy' | 'violent' {
  if (mmPerH >= 50) return 'violent'
  if (mmPerH > 7.62) return 'heavy'
  return mmPerH > 2.54 ? 'moderate' : 'light'
}

/**
 * The largest ratio that the report is sure to reach, or reaches at its own duration:
 * - at its own duration, between two set ones, guidance is interpolated in logarithms of both;
 * - over a longer set duration at least as much fell;
 * - over a shorter one, n of which cover the report, some window held at least an n-th.
 * @param guidance  durations all different, at least one; any order
 * @throws {ScienceError} TOO_FEW_POINTS without guidance; OUT_OF_DOMAIN unless minutes are above 0
 */
export function againstGuidance(
  amountUm: number,
  minutes: number,
  guidance: readonly GuidanceAmount[],
): AgainstGuidance {
  if (guidance.length === 0) throw new ScienceError('TOO_FEW_POINTS', 'There is no guidance amount to compare with.')
  if (!(minutes > 0)) throw new ScienceError('OUT_OF_DOMAIN', `An amount over ${minutes} minutes has no rate.`)
  const sorted = [...guidance].sort((one, other) => one.minutes - other.minutes)
  let best: AgainstGuidance | null = null
  const consider = (ratio: number, at: GuidanceAmount): void => {
    if (best === null || ratio > best.ratio) best = { ratio, minutes: at.minutes, guidanceUm: at.amountUm }
  }
  const own = interpolated(sorted, minutes)
  if (own !== null) consider(amountUm / own, { minutes, amountUm: own })
  for (const set of sorted) {
    const windows = set.minutes >= minutes ? 1 : Math.ceil(minutes / set.minutes)
    consider(amountUm / windows / set.amountUm, set)
  }
  return best as unknown as AgainstGuidance
}

/** Guidance of a duration between two set ones; null outside them. */
function interpolated(sorted: readonly GuidanceAmount[], minutes: number): number | null {
  const after = sorted.findIndex((set) => set.minutes >= minutes)
  const upper = sorted[after]
  if (upper === undefined) return null
  if (upper.minutes === minutes) return upper.amountUm
  const lower = sorted[after - 1]
  if (lower === undefined) return null
  const share = Math.log(minutes / lower.minutes) / Math.log(upper.minutes / lower.minutes)
  return Math.exp(Math.log(lower.amountUm) * (1 - share) + Math.log(upper.amountUm) * share)
}
