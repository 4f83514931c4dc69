/**
 * Parameters of the day's field from the day's own readings: most likely after a mild prior, so that three gauges give
 * something sane and a hundred speak for themselves. The unknown mean is integrated out, as in restricted likelihood.
 */
import type { GaugeSet } from '../network/gaugeSet.ts'
import { NearestIndex } from '../space/nearest.ts'
import { descend } from '../stats/descend.ts'
import { minimise } from '../stats/minimise.ts'
import type { VariogramKind } from '../variogram/variogram.ts'
import { logLikelihood, openBench } from './dayLikelihood.ts'
import { checkDay, type DayAmounts, isDry } from './fieldDay.ts'
import type { FieldParams } from './fieldParams.ts'
import { spreadOrder } from './spreadOrder.ts'

/** What is believed of a day's field before its readings are seen; medians, and spreads of their logarithms or logits. */
export interface FieldPrior {
  /** `auto` takes the likelier of exponential and spherical. */
  kind: VariogramKind | 'auto'
  practicalRangeM: number
  rangeSpread: number
  nuggetShare: number
  nuggetSpread: number
  /** Of the logarithm of longest over shortest range, along each of two axes. */
  anisotropySpread: number
  power: number
  powerSpread: number
  /** Standard deviation of scores, when an amount of unit size scores 1. */
  sd: number
  sdSpread: number
  /** Unit amount when no gauge is wet, mm. */
  unitMm: number
}

/**
 * Ranges: fronts 100 to 150 km, showers 20 to 50 km (common practice). Power: 0.25 to 0.5 suits daily rain, [Erdin2012].
 * Nugget: small-scale rain and a few percent of catch (common practice). The rest is wide.
 */
export const usualFieldPrior: FieldPrior = {
  kind: 'auto',
  practicalRangeM: 120_000,
  rangeSpread: 0.8,
  nuggetShare: 0.07,
  nuggetSpread: 1,
  anisotropySpread: 0.45,
  power: 0.4,
  powerSpread: 0.15,
  sd: 0.6,
  sdSpread: 0.7,
  unitMm: 5,
}

/** Readings looked at when fitting; twice as many cost eight times as much and change little. */
const mostFitted = 160
/** With fewer readings there is nothing to tell one shape from another. */
const fewestForShape = 15

/**
 * @param gauges  n gauges
 * @param day     their amounts, n each
 * @param prior   opinions to replace the usual ones
 * @returns parameters for fieldWith; the middle of the prior where there is no reading
 * @throws {ScienceError} SHAPES_DIFFER
 * @remarks Some 200 likelihoods of at most 160 readings: about 0.2 s at most, a few milliseconds for 30 gauges.
 */
export function fitField(gauges: GaugeSet, day: DayAmounts, prior: Partial<FieldPrior> = {}): FieldParams {
  checkDay(gauges, day)
  const belief = { ...usualFieldPrior, ...prior }
  const used = chooseReadings(gauges, day)
  const unitMm = typicalAmountMm(day, used) ?? belief.unitMm
  const bench = openBench(day, used, gauges.xM, gauges.yM)
  const paramsAt = (kind: VariogramKind, at: Float64Array): FieldParams => ({
    ...paramsFrom(at, belief, unitMm, day, used),
    kind,
  })
  const first = belief.kind === 'auto' ? 'exponential' : belief.kind
  const start = new Float64Array(6)
  if (used.length === 0) return paramsAt(first, start)
  const lossOf =
    (kind: VariogramKind) =>
    (at: Float64Array): number => {
      let penalty = 0
      for (let k = 0; k < at.length; k++) penalty += at[k]! * at[k]!
      if (!(penalty < 200)) return Number.POSITIVE_INFINITY
      return 0.5 * penalty - logLikelihood(bench, paramsAt(kind, at))
    }
  const scales = [0.5, 0.5, 0.5, 0.5, 0.3, 0.5]
  const smooth = descend(lossOf(first), start, { scales, mostSteps: 25, tolerance: 0.02 })
  if (belief.kind !== 'auto' || used.length < fewestForShape) return paramsAt(first, smooth.at)
  // The spherical's likelihood has kinks, so it is searched by simplex, from a range shorter by a third.
  const from = Float64Array.from(smooth.at)
  from[0]! -= 0.35 / belief.rangeSpread
  const kinked = minimise(lossOf('spherical'), from, {
    steps: [0.4, 0.5, 0.5, 0.5, 0.2, 0.3],
    mostEvaluations: 160,
    tolerance: 0.02,
  })
  return kinked.value < smooth.value ? paramsAt('spherical', kinked.at) : paramsAt(first, smooth.at)
}

/** Standardised variables to parameters: 0 everywhere is the middle of the prior. */
function paramsFrom(
  at: Float64Array,
  belief: FieldPrior,
  unitMm: number,
  day: DayAmounts,
  used: Int32Array,
): Omit<FieldParams, 'kind'> {
  const cosine = at[2]! * belief.anisotropySpread
  const sine = at[3]! * belief.anisotropySpread
  const logit = Math.log(belief.nuggetShare / (1 - belief.nuggetShare)) + at[1]! * belief.nuggetSpread
  const power = Math.min(1.5, Math.max(0.1, belief.power + at[5]! * belief.powerSpread))
  const sd = belief.sd * Math.exp(at[4]! * belief.sdSpread)
  const bearing = (0.5 * Math.atan2(sine, cosine) * 180) / Math.PI
  return {
    practicalRangeM: belief.practicalRangeM * Math.exp(at[0]! * belief.rangeSpread),
    majorBearingDeg: (bearing + 180) % 180,
    anisotropyRatio: Math.exp(-Math.hypot(cosine, sine)),
    nuggetShare: 1 / (1 + Math.exp(-logit)),
    power,
    unitMm,
    sd,
    meanCentre: roughMean(day, used, power, unitMm, sd),
  }
}

/** Mean score with dry gauges put a little below 0: only the centre of a wide prior. */
function roughMean(day: DayAmounts, used: Int32Array, power: number, unitMm: number, sd: number): number {
  let sum = 0
  for (let k = 0; k < used.length; k++) {
    const g = used[k]!
    if (isDry(day, g)) sum -= 0.6 * sd
    else sum += (Math.max(0, day.amountMm[g]!) / (unitMm * (day.usual?.[g] ?? 1))) ** power
  }
  return used.length === 0 ? 0 : sum / used.length
}

/** Mean wet amount against what is usual; undefined where none is wet. */
function typicalAmountMm(day: DayAmounts, used: Int32Array): number | undefined {
  let sum = 0
  let count = 0
  for (let k = 0; k < used.length; k++) {
    const g = used[k]!
    if (isDry(day, g) || !(day.amountMm[g]! > 0)) continue
    sum += day.amountMm[g]! / (day.usual?.[g] ?? 1)
    count++
  }
  return count > 0 ? sum / count : undefined
}

/**
 * The readings to fit by, wet ones first (they are known best): all of them, or places spread over the whole together
 * with the nearest of each, so that short distances are told as well as long ones.
 */
function chooseReadings(gauges: GaugeSet, day: DayAmounts): Int32Array {
  const all: number[] = []
  for (let g = 0; g < day.amountMm.length; g++) if (!Number.isNaN(day.amountMm[g]!)) all.push(g)
  const xM = Float64Array.from(all, (g) => gauges.xM[g]!)
  const yM = Float64Array.from(all, (g) => gauges.yM[g]!)
  const order = spreadOrder(xM, yM)
  const taken = new Set<number>()
  if (all.length <= mostFitted) for (const k of order) taken.add(k)
  else {
    const index = new NearestIndex(xM, yM)
    const near = new Int32Array(4)
    for (let s = 0; s < order.length && taken.size < mostFitted; s++) {
      index.nearestInto(xM[order[s]!]!, yM[order[s]!]!, 4, near)
      for (const k of near) if (taken.size < mostFitted) taken.add(k)
    }
  }
  const chosen = Array.from(taken, (k) => all[k]!)
  return Int32Array.from([...chosen.filter((g) => !isDry(day, g)), ...chosen.filter((g) => isDry(day, g))])
}
