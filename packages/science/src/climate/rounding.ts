/**
 * How each gauge's amounts are rounded when read: the shares of its readings that are taken to the full mark, to every
 * second one, to fives or tens. Learned from the multiples its record is written in, as a mixture of steps (EM). Rounding
 * habits of observers: [Daly2007].
 */
import type { DailyTable } from '../network/dailyTable.ts'
import { isMultiple } from './resolution.ts'

export interface Rounding {
  /** Last place that amounts are written to, mm: 0.1 or 0.01. */
  writtenMm: number
  /** Steps that amounts may be rounded to, mm; the first is the last written place. */
  stepsMm: readonly number[]
  /** Share of the gauge's readings rounded to a step; index gauge * stepsMm.length + step; a gauge's sum to 1. */
  share: Float64Array
}

const steps = { mm: [0.1, 0.2, 0.5, 1, 2, 5, 10], inch: [0.254, 0.508, 1.27, 2.54, 6.35, 12.7, 25.4] } as const
/** Share of amounts that must be written to hundredths of a millimetre for the network to be taken to do so. */
const finelyWritten = 0.01
/** Part of the amounts that mistakes put on any multiple; what is more than this is a way of reading. */
const mistakenShare = 0.03
/** Days of history used at most, latest first: observers change. */
const daysUsed = 3650
/** Readings at which a gauge's own record weighs as much as the network's. */
const readingsToTell = 12
/** Amounts that tell in which places a network writes. */
const amountsToTell = 30
/** Shares believed before a gauge has told, 0.95 together: of hundredths of an inch, and where nothing is known yet. */
const inchPrior = [
  [0.01, 0.05],
  [0.254, 0.9],
] as const
const unknownPrior = [
  [0.01, 0.35],
  [0.254, 0.3],
  [0.1, 0.3],
] as const
const rounds = 25
const least = 0.0015

/** Places that nobody reads: amounts as fine as the network writes them. */
export function noRounding(like: Rounding, gaugeCount: number): Rounding {
  const count = like.stepsMm.length
  const share = new Float64Array(gaugeCount * count)
  for (let g = 0; g < gaugeCount; g++) share[g * count] = 1
  return { ...like, share }
}

/** @returns tenths of a millimetre, hundredths of an inch or finer, each as likely, where there is no history. Shapes: share is Float64Array(gaugeCount * steps). */
export function learnRounding(history: DailyTable): Rounding {
  const n = history.gaugeCount
  const amounts: { gauge: number; mm: number }[] = []
  for (let i = n * Math.max(0, history.dayCount - daysUsed); i < history.amountMm.length; i++) {
    const mm = history.amountMm[i]!
    if (history.spanDays[i] === 1 && mm > 0) amounts.push({ gauge: i % n, mm })
  }
  const fine = amounts.filter(({ mm }) => Math.abs(mm * 10 - Math.round(mm * 10)) > 0.02).length
  const isKnown = amounts.length >= amountsToTell
  const writtenMm = isKnown && fine <= finelyWritten * amounts.length ? 0.1 : 0.01
  const stepsMm = writtenMm === 0.1 ? [...steps.mm] : [0.01, ...steps.inch, ...steps.mm]
  const S = stepsMm.length
  const prior = new Float64Array(S).fill(0.05 / S)
  if (writtenMm === 0.1) prior[0]! += 0.95
  else if (isKnown) for (const [step, share] of inchPrior) prior[stepsMm.indexOf(step)]! += share
  else for (const [step, share] of unknownPrior) prior[stepsMm.indexOf(step)]! += share
  const fits = amounts.map(({ mm }) => fitsOf(mm, stepsMm))
  const network = mixtureOf(fits, stepsMm, prior, readingsToTell)
  const byGauge: number[][] = Array.from({ length: n }, () => [])
  amounts.forEach(({ gauge }, k) => void byGauge[gauge]!.push(fits[k]!))
  const share = new Float64Array(n * S)
  for (let g = 0; g < n; g++) share.set(mixtureOf(byGauge[g]!, stepsMm, network, readingsToTell), g * S)
  return { writtenMm, stepsMm, share }
}

/** Bits of the steps that an amount is a multiple of. */
function fitsOf(mm: number, stepsMm: readonly number[]): number {
  let bits = 0
  stepsMm.forEach((step, s) => {
    if (isOnStep(mm, step, 0)) bits |= 1 << s
  })
  return bits
}

/** Whether an amount, known to ± toleranceMm, can be read as a multiple of a step; nothing is no multiple. */
export function isOnStep(mm: number, stepMm: number, toleranceMm: number): boolean {
  return Math.round(mm / stepMm) > 0 && isMultiple(mm, stepMm, toleranceMm)
}

/** EM for the shares of steps, the chance of a multiple being as wide as its step; shrunk toward a prior. */
function mixtureOf(
  fits: readonly number[],
  stepsMm: readonly number[],
  prior: Float64Array,
  toTell: number,
): Float64Array {
  const S = stepsMm.length
  const counts = new Map<number, number>()
  for (const bits of fits) counts.set(bits, (counts.get(bits) ?? 0) + 1)
  let share = Float64Array.from(prior)
  for (let round = 0; round < rounds; round++) {
    const next = Float64Array.from(prior, (p) => p * toTell)
    let total = toTell
    for (const [bits, count] of counts) {
      let sum = 0
      for (let s = 0; s < S; s++) if (bits & (1 << s)) sum += share[s]! * stepsMm[s]!
      const read = (1 - mistakenShare) * sum
      const believed = read / (read + mistakenShare * stepsMm[0]!)
      for (let s = 0; s < S; s++)
        if (bits & (1 << s)) next[s]! += (count * believed * share[s]! * stepsMm[s]!) / Math.max(1e-300, sum)
      total += count * believed
    }
    share = next.map((value) => value / total)
  }
  share[0] = Math.max(least, share[0]!)
  const sum = share.reduce((a, b) => a + b, 0)
  return share.map((value) => value / sum)
}
