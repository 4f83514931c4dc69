/**
 * One gauge's reports over days, judged together: each day either stands alone (its own explanations, sources.ts) or
 * belongs to a stretch that one mistake explains: rain dated a day late or early, or a total over days reported as zero
 * or not at all. A semi-Markov chain, summed exactly forward and backward. Source: [Rabiner1989], explicit durations.
 */
import { amountMass, amountMoments, dryChance, type Predictive } from '../expectation/predictive.ts'
import { sumLaw } from './amountLaw.ts'
import type { MistakeShares } from './rates.ts'
import { type Reader, readMass } from './readMass.ts'
import { roundingMm } from './sources.ts'

export interface Stretch {
  kind: 'late' | 'early' | 'carried'
  /** Rows, both included. */
  from: number
  to: number
  /** ln of (prior × likelihood of the stretch) over the product of the single days' weights. */
  logRatio: number
}

export interface GaugeDays {
  rows: number
  /** mm; NaN where nothing was reported. */
  amountMm: (row: number) => number
  /** False for rows covered by a declared total. */
  isFree: (row: number) => boolean
  predictive: (row: number) => Predictive
  resolutionMm: number
  reader: Reader
  /** Sum of the weights of the single-day explanations of a report. */
  singleWeight: (row: number) => number
  rate: number
  shares: MistakeShares
}

const mostCarriedDays = 7
const mostShiftedDays = 4
/** Of first reports after days of silence, the share that are totals of these days: about one in ten, common practice. */
const silentTotalShare = 0.1

/** All stretches that could end on `to` with some weight. */
export function stretchesEndingAt(days: GaugeDays, to: number): Stretch[] {
  const out: Stretch[] = []
  const half = days.resolutionMm / 2
  const end = days.amountMm(to)
  if (end > half) {
    addCarried(days, to, end, half, out)
    addLate(days, to, half, out)
  } else if (end <= half) addEarly(days, to, half, out)
  return out
}

function addCarried(days: GaugeDays, to: number, totalMm: number, half: number, out: Stretch[]): void {
  let logSingles = Math.log(days.singleWeight(to))
  let dry = dryChance(days.predictive(to))
  const moments = { mean: 0, variance: 0 }
  amountMoments(days.predictive(to), moments)
  let mean = moments.mean
  let variance = moments.variance
  let missing = 0
  for (let from = to - 1; from >= 0 && to - from < mostCarriedDays; from--) {
    if (!days.isFree(from)) break
    const amountMm = days.amountMm(from)
    if (amountMm > half) break
    const isMissing = Number.isNaN(amountMm)
    if (isMissing) missing++
    else logSingles += Math.log(days.singleWeight(from))
    const p = days.predictive(from)
    dry *= dryChance(p)
    amountMoments(p, moments)
    mean += moments.mean
    variance += moments.variance
    const count = to - from + 1
    if (missing > 0 && !isMissing && missing < count - 1 && missing > 3) break
    let mass = readMass(sumLaw(mean, variance, dry).mass, days.reader, totalMm, roundingMm, half)
    // All of it on the first of two days is a day slip, not a total.
    if (count === 2 && !isMissing) mass -= 0.97 * massOf(days, p, totalMm) * dryChance(days.predictive(to))
    const allMissing = missing === count - 1
    // A total after silence is of all the silent days, and these are what makes it likely.
    if (allMissing && from > 0 && Number.isNaN(days.amountMm(from - 1)) && days.isFree(from - 1)) continue
    const chance = allMissing ? silentTotalShare : days.rate * days.shares.carried * 0.5 ** (count - 1)
    const logRatio = Math.log(chance * Math.max(0, mass) + 1e-300) - logSingles
    if (logRatio > -12) out.push({ kind: 'carried', from, to, logRatio })
  }
}

/** Rain of day d reported on d + 1 for a few days: zero or nothing first, then the amounts, the last day truly dry. */
function addLate(days: GaugeDays, to: number, half: number, out: Stretch[]): void {
  let logMass = Math.log(dryChance(days.predictive(to)) + 1e-300)
  let logSingles = Math.log(days.singleWeight(to))
  for (let from = to - 1; from >= 0 && to - from < mostShiftedDays; from--) {
    if (!days.isFree(from)) break
    const reported = days.amountMm(from + 1)
    if (Number.isNaN(reported)) break
    const mass = massOf(days, days.predictive(from), reported)
    logMass += Math.log(mass + 1e-300)
    const first = days.amountMm(from)
    if (!Number.isNaN(first)) logSingles += Math.log(days.singleWeight(from))
    if (first > half) continue
    const chance = 0.5 * days.rate * days.shares.day * 0.3 ** (to - from - 1)
    const logRatio = Math.log(chance) + logMass - logSingles
    if (logRatio > -12) out.push({ kind: 'late', from, to, logRatio })
    if (Number.isNaN(first)) break
  }
}

/** Rain of day d + 1 reported on d for a few days: the first day truly dry, the last one reported as zero. */
function addEarly(days: GaugeDays, to: number, half: number, out: Stretch[]): void {
  let logMass = 0
  let logSingles = Math.log(days.singleWeight(to))
  for (let from = to - 1; from >= 0 && to - from < mostShiftedDays; from--) {
    if (!days.isFree(from)) break
    const reported = days.amountMm(from)
    if (Number.isNaN(reported)) break
    const mass = massOf(days, days.predictive(from + 1), reported)
    logMass += Math.log(mass + 1e-300)
    logSingles += Math.log(days.singleWeight(from))
    if (reported <= half) continue
    const chance = 0.5 * days.rate * days.shares.day * 0.3 ** (to - from - 1)
    const logRatio = Math.log(chance) + logMass + Math.log(dryChance(days.predictive(from)) + 1e-300) - logSingles
    if (logRatio > -12) out.push({ kind: 'early', from, to, logRatio })
  }
}

/** Chance that the gauge was read as an amount on a day; a zero counts as dry. */
function massOf(days: GaugeDays, p: Predictive, mm: number): number {
  const half = days.resolutionMm / 2
  if (mm <= half) return dryChance(p)
  return readMass((lowMm, highMm) => amountMass(p, lowMm, highMm), days.reader, mm, 0, half)
}

export interface SequencePosterior {
  /** Chance that a row is explained alone (by its own sources). */
  alone: Float64Array
  /** Chance of each stretch, in the order given. */
  stretch: Float64Array
}

/**
 * Exact sums over all ways to cut the rows into single days and stretches.
 * @param stretches  in any order, rows within 0…rows - 1
 */
export function sumSequences(rows: number, stretches: readonly Stretch[]): SequencePosterior {
  const alone = new Float64Array(rows).fill(1)
  const chance = new Float64Array(stretches.length)
  if (stretches.length === 0) return { alone, stretch: chance }
  const forward = new Float64Array(rows + 1)
  const backward = new Float64Array(rows + 1)
  const ending: number[][] = Array.from({ length: rows }, () => [])
  const starting: number[][] = Array.from({ length: rows }, () => [])
  stretches.forEach((s, index) => {
    ending[s.to]!.push(index)
    starting[s.from]!.push(index)
  })
  for (let row = 0; row < rows; row++) {
    let sum = forward[row]!
    for (const index of ending[row]!) sum = logAdd(sum, forward[stretches[index]!.from]! + stretches[index]!.logRatio)
    forward[row + 1] = sum
  }
  for (let row = rows - 1; row >= 0; row--) {
    let sum = backward[row + 1]!
    for (const index of starting[row]!)
      sum = logAdd(sum, stretches[index]!.logRatio + backward[stretches[index]!.to + 1]!)
    backward[row] = sum
  }
  const all = forward[rows]!
  stretches.forEach((s, index) => {
    const p = Math.exp(forward[s.from]! + s.logRatio + backward[s.to + 1]! - all)
    chance[index] = p
    for (let row = s.from; row <= s.to; row++) alone[row] = Math.max(0, alone[row]! - p)
  })
  return { alone, stretch: chance }
}

function logAdd(a: number, b: number): number {
  const top = Math.max(a, b)
  return top + Math.log1p(Math.exp(Math.min(a, b) - top))
}
