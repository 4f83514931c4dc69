/** The two-parameter gamma distribution as far as the gamma test needs it. */

const lanczos = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
]

/** Natural logarithm of the gamma function for x > 0. Source: Lanczos (1964), g = 7, nine terms. */
export function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x)
  let sum = lanczos[0]!
  for (let i = 1; i < lanczos.length; i++) sum += lanczos[i]! / (x - 1 + i)
  const t = x + 6.5
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(t) - t + Math.log(sum)
}

/** Lower regularised incomplete gamma P(shape, x): series below shape + 1, else continued fraction (Lentz). */
export function gammaCdf(shape: number, x: number): number {
  if (x <= 0) return 0
  const front = Math.exp(-x + shape * Math.log(x) - logGamma(shape))
  if (x < shape + 1) {
    let term = 1 / shape
    let sum = term
    for (let k = 1; k < 500 && term > sum * 1e-15; k++) {
      term *= x / (shape + k)
      sum += term
    }
    return Math.min(1, sum * front)
  }
  return Math.max(0, 1 - gammaUpperTail(shape, x, front))
}

/** 1 - P(shape, x), without the loss of digits far out. */
export function gammaUpper(shape: number, x: number): number {
  if (x < shape + 1) return 1 - gammaCdf(shape, x)
  return gammaUpperTail(shape, x, Math.exp(-x + shape * Math.log(x) - logGamma(shape)))
}

function gammaUpperTail(shape: number, x: number, front: number): number {
  let b = x + 1 - shape
  let c = 1e300
  let d = 1 / b
  let fraction = d
  for (let k = 1; k < 500; k++) {
    const a = -k * (k - shape)
    b += 2
    d = 1 / (a * d + b)
    c = b + a / c
    fraction *= d * c
    if (Math.abs(d * c - 1) < 1e-15) break
  }
  return front * fraction
}

/** Thom's (1958) closed form of the maximum-likelihood shape, from ln(mean) - mean(ln). */
export function thomShape(logOfMeanLessMeanOfLog: number): number {
  const a = Math.max(1e-6, logOfMeanLessMeanOfLog)
  return (1 + Math.sqrt(1 + (4 * a) / 3)) / (4 * a)
}
