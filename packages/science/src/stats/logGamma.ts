/**
 * Logarithm of the gamma function and its slope (digamma), for positive arguments, to about 1e-15 absolute.
 * Source: Stirling's series after shifting the argument upward, [Abramowitz1964] 6.1.41, 6.1.15, 6.3.18, 6.3.5.
 */

const halfLogTwoPi = 0.9189385332046727

/** ln Γ(x), x > 0. NaN for anything else. */
export function logGamma(x: number): number {
  if (!(x > 0)) return Number.NaN
  if (x === 1 || x === 2) return 0
  let shift = 1
  let y = x
  while (y < 12) {
    shift *= y
    y += 1
  }
  const s = 1 / (y * y)
  const series = (1 / 12 - s * (1 / 360 - s * (1 / 1260 - s * (1 / 1680 - s * (1 / 1188 - (s * 691) / 360360))))) / y
  return (y - 0.5) * Math.log(y) - y + halfLogTwoPi + series - Math.log(shift)
}

/** d/dx ln Γ(x), x > 0. NaN for anything else. */
export function digamma(x: number): number {
  if (!(x > 0)) return Number.NaN
  let shift = 0
  let y = x
  while (y < 12) {
    shift += 1 / y
    y += 1
  }
  const s = 1 / (y * y)
  const series = s * (1 / 12 - s * (1 / 120 - s * (1 / 252 - s * (1 / 240 - s * (1 / 132 - (s * 691) / 32760)))))
  return Math.log(y) - 0.5 / y - series - shift
}
