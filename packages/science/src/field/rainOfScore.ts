/**
 * From a normal belief about a score (mean, variance, in standard deviations of the scores) to amounts: quantiles,
 * mean and chance of dry.
 */
import { normalCdf } from '../stats/normalCdf.ts'
import type { FieldParams } from './fieldParams.ts'

/** Normal scores of P10 and P90. */
export const tenthScore = 1.2815515655446004

/** Amount (mm) of a score at a place with usual 1; 0 below the dry threshold. */
export function amountOfScore(params: FieldParams, score: number, dryBelow: number): number {
  if (!(score > dryBelow) || score <= 0) return 0
  return params.unitMm * (score * params.sd) ** (1 / params.power)
}

/** Gauss-Legendre nodes and weights of 20 points on (-1, 1), positive half. Source: [Abramowitz1964] table 25.4. */
const nodes = [
  0.07652652113349734, 0.2277858511416451, 0.37370608871541955, 0.5108670019508271, 0.636053680726515,
  0.7463319064601508, 0.8391169718222188, 0.912234428251326, 0.9639719272779138, 0.9931285991850949,
]
const weights = [
  0.15275338713072584, 0.14917298647260374, 0.14209610931838204, 0.13168863844917664, 0.11819453196151841,
  0.10193011981724044, 0.08327674157670475, 0.06267204833410907, 0.04060142980038694, 0.017614007139152118,
]
const rootTwoPiInverse = 0.3989422804014327
const reach = 7

/** Mean amount (mm) at a place with usual 1: the amount weighed by the belief, dry counting 0. */
export function meanAmountMm(params: FieldParams, mean: number, variance: number, dryBelow: number): number {
  const sd = Math.sqrt(variance)
  const from = Math.max(-reach, (Math.max(0, dryBelow) - mean) / sd)
  if (from >= reach) return 0
  const half = 0.5 * (reach - from)
  const middle = 0.5 * (reach + from)
  const exponent = 1 / params.power
  let sum = 0
  for (let k = 0; k < nodes.length; k++) {
    const off = half * nodes[k]!
    const a = middle - off
    const b = middle + off
    sum +=
      weights[k]! *
      (Math.exp(-0.5 * a * a) * (mean + sd * a) ** exponent + Math.exp(-0.5 * b * b) * (mean + sd * b) ** exponent)
  }
  return params.unitMm * params.sd ** exponent * rootTwoPiInverse * half * sum
}

/** Chance of a score below the dry threshold. */
export function dryChanceOf(mean: number, variance: number, dryBelow: number): number {
  return normalCdf((dryBelow - mean) / Math.sqrt(variance))
}
