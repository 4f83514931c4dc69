export interface ClimatePrior {
  /** Weight of the standing prior, in days. */
  days: number
  dryShare: number
  /** Typical (geometric mean) wet amount, mm, and the spread of its logarithm. */
  wetMm: number
  wetLogSd: number
}

/** Broad values for a temperate day; common practice, soon outweighed by history. */
export const temperateClimate: ClimatePrior = { days: 20, dryShare: 0.62, wetMm: 3.2, wetLogSd: 1.45 }
