/**
 * Regularised incomplete gamma functions: the gamma distribution's share below (P) and above (Q) x for unit scale.
 * Series below shape + 1, continued fraction above. Source: [Abramowitz1964] 6.5.29 and 6.5.31; Lentz's method.
 */
import { logGamma } from './logGamma.ts'

const mostTerms = 10_000
const precision = 1e-16
const tiny = 1e-300

/** P(shape, x); shape > 0, x >= 0. NaN for anything else. */
export function incompleteGammaBelow(shape: number, x: number): number {
  if (!(shape > 0) || !(x >= 0)) return Number.NaN
  if (x === 0) return 0
  return x < shape + 1 ? series(shape, x) : 1 - continuedFraction(shape, x)
}

/** Q(shape, x) = 1 - P(shape, x), with its digits kept in the upper tail. */
export function incompleteGammaAbove(shape: number, x: number): number {
  if (!(shape > 0) || !(x >= 0)) return Number.NaN
  if (x === 0) return 1
  return x < shape + 1 ? 1 - series(shape, x) : continuedFraction(shape, x)
}

function series(shape: number, x: number): number {
  let term = 1 / shape
  let sum = term
  for (let k = 1; k < mostTerms && term > sum * precision; k++) {
    term *= x / (shape + k)
    sum += term
  }
  return sum * Math.exp(shape * Math.log(x) - x - logGamma(shape))
}

function continuedFraction(shape: number, x: number): number {
  let b = x + 1 - shape
  let c = 1 / tiny
  let d = 1 / b
  let product = d
  for (let k = 1; k < mostTerms; k++) {
    const a = -k * (k - shape)
    b += 2
    d = 1 / guarded(a * d + b)
    c = guarded(b + a / c)
    const step = c * d
    product *= step
    if (Math.abs(step - 1) < 1e-15) break
  }
  return product * Math.exp(shape * Math.log(x) - x - logGamma(shape))
}

function guarded(value: number): number {
  return Math.abs(value) < tiny ? tiny : value
}
