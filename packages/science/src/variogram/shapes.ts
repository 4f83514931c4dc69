/**
 * Share of the partial sill reached at a lag given in practical ranges; 0 at lag 0. The practical range is where the
 * spherical reaches 1 and the others 0.95. Sources: [Chiles2012] ch. 2; Matérn as in [Stein1999].
 */

/** -ln 0.05: lag in practical ranges to lag in range parameters of the exponential. */
export const exponentialFactor = 2.995732273553991
/** Its square root, for the Gaussian. */
export const gaussianFactor = 1.7308183826022854
/** Where (1 + s) e^-s = 0.05, for the Matérn with ν = 3/2. [calculated] */
export const maternThreeHalvesFactor = 4.743864518390577

export function sphericalShare(h: number): number {
  return h >= 1 ? 1 : h * (1.5 - 0.5 * h * h)
}

export function exponentialShare(h: number): number {
  return -Math.expm1(-exponentialFactor * h)
}

export function gaussianShare(h: number): number {
  return -Math.expm1(-exponentialFactor * h * h)
}

export function maternThreeHalvesShare(h: number): number {
  const s = maternThreeHalvesFactor * h
  return 1 - (1 + s) * Math.exp(-s)
}
