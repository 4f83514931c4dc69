/**
 * The standard normal distribution: density, distribution function, its logarithm and the probability of an interval.
 * No allocation; full double precision relative to the smaller tail. Quantiles are in normalQuantile.ts.
 * Source: [Cody1969], in the form of ANORM of [Cody1993].
 */

const rootTwoPiInverse = 0.3989422804014327
const logRootTwoPi = 0.9189385332046727
const rootThirtyTwo = 5.656854249492381

/** Density of the standard normal at z. */
export function normalPdf(z: number): number {
  return rootTwoPiInverse * Math.exp(-0.5 * z * z)
}

/** Share of the standard normal at or below z; for the upper tail call it with -z. NaN gives NaN. */
export function normalCdf(z: number): number {
  const y = z < 0 ? -z : z
  if (y <= 0.67448975) return 0.5 + centre(z)
  if (y > lastScore) return z < 0 ? 0 : 1
  if (Number.isNaN(z)) return z
  const tail = expMinusHalfSquare(y) * (y <= rootThirtyTwo ? middleRatio(y) : farRatio(y))
  return z < 0 ? tail : 1 - tail
}

/** Natural logarithm of the share at or below z; keeps its digits however far down the tail z lies. */
export function logNormalCdf(z: number): number {
  if (z > -5) return z > 5 ? Math.log1p(-normalCdf(-z)) : Math.log(normalCdf(z))
  return -0.5 * z * z + Math.log(z >= -rootThirtyTwo ? middleRatio(-z) : farRatio(-z))
}

/** Probability that a standard normal lies in (low, high]; keeps its digits in both tails. 0 where high <= low. */
export function normalInterval(low: number, high: number): number {
  if (!(high > low)) return high <= low ? 0 : Number.NaN
  if (low > 0) return normalCdf(-low) - normalCdf(-high)
  if (high < 0) return normalCdf(high) - normalCdf(low)
  return 1 - normalCdf(low) - normalCdf(-high)
}

/** Natural logarithm of the probability of (low, high]; stable for cells far out in a tail. */
export function logNormalInterval(low: number, high: number): number {
  if (!(high > low)) return high <= low ? Number.NEGATIVE_INFINITY : Number.NaN
  // Mirror so that the end nearer to the middle is `high` and lies below 0.
  const mirrored = low > 0
  const near = mirrored ? -low : high
  const far = mirrored ? -high : low
  if (near > -5) return Math.log(normalInterval(far, near))
  const top = logNormalCdf(near)
  return top + Math.log(-Math.expm1(logNormalCdf(far) - top))
}

/** Mills-like ratio density(z) / cdf(z), the slope of logNormalCdf; about -z far down the tail. */
export function normalHazardBelow(z: number): number {
  if (z > -5) return normalPdf(z) / normalCdf(z)
  return rootTwoPiInverse / (z >= -rootThirtyTwo ? middleRatio(-z) : farRatio(-z))
}

/** Logarithm of the density at z. */
export function logNormalPdf(z: number): number {
  return -0.5 * z * z - logRootTwoPi
}

/** Beyond, nothing of a tail is left in double precision. */
const lastScore = 38.6
/** exp(-y²/2) at sixteenths. */
const atSixteenths = Float64Array.from({ length: Math.floor(16 * lastScore) + 1 }, (_, k) =>
  Math.exp(-0.5 * (k / 16) * (k / 16)),
)

/** exp(-y²/2) for y from 0 to lastScore, split at sixteenths so that the rounding of y² is not magnified. */
function expMinusHalfSquare(y: number): number {
  const k = Math.floor(y * 16)
  const coarse = k / 16
  return atSixteenths[k]! * Math.exp(-0.5 * (y - coarse) * (y + coarse))
}

/** cdf(z) - 1/2 for |z| <= 0.67. */
function centre(z: number): number {
  const s = z * z
  const up =
    (((0.06568233791820745 * s + 2.2352520354606837) * s + 161.02823106855587) * s + 1067.6894854603709) * s +
    18154.98125334356
  const down = (((s + 47.202581904688245) * s + 976.0985517377767) * s + 10260.932208618979) * s + 45507.78933502673
  return (z * up) / down
}

/** Upper tail over exp(-y²/2), 0.67 < y <= √32. */
function middleRatio(y: number): number {
  let up = 1.0765576773720192e-8 * y + 0.39894151208813466
  up = up * y + 8.883149794388377
  up = up * y + 93.50665613217785
  up = up * y + 597.2702763948002
  up = up * y + 2494.5375852903726
  up = up * y + 6848.190450536283
  up = up * y + 11602.65143764735
  up = up * y + 9842.714838383978
  let down = y + 22.266688044328117
  down = down * y + 235.387901782625
  down = down * y + 1519.3775994075547
  down = down * y + 6485.558298266761
  down = down * y + 18615.571640885097
  down = down * y + 34900.95272114598
  down = down * y + 38912.00328609327
  down = down * y + 19685.429676859992
  return up / down
}

/** Upper tail over exp(-y²/2), y > √32. */
function farRatio(y: number): number {
  const s = 1 / (y * y)
  let up = 0.023073441764940174 * s + 0.215898534057957
  up = up * s + 0.12740116116024736
  up = up * s + 0.022235277870649807
  up = up * s + 0.0014216191932278934
  up = up * s + 2.9112874951168793e-5
  let down = s + 1.284260096144911
  down = down * s + 0.4682382124808651
  down = down * s + 0.06598813786892856
  down = down * s + 0.0037823963320275824
  down = down * s + 7.297515550839662e-5
  return (rootTwoPiInverse - (s * up) / down) / y
}
