/** The expected amount of one report as far as explanations need it: a single day's law, or a lognormal sum of days. */
import { amountMass, amountQuantile, dryChance, type Predictive } from '../expectation/predictive.ts'
import { normalCdf } from '../stats/normalCdf.ts'
import { normalQuantile } from '../stats/normalQuantile.ts'

export interface AmountLaw {
  /** Chance that nothing the gauge resolves fell. */
  dry: number
  /** Chance that the amount lies in (lowMm, highMm]; a low end of 0 or less takes in the dry. */
  mass: (lowMm: number, highMm: number) => number
  quantile: (level: number) => number
}

export function dailyLaw(p: Predictive): AmountLaw {
  return {
    dry: dryChance(p),
    mass: (lowMm, highMm) => amountMass(p, lowMm, highMm),
    quantile: (level) => amountQuantile(p, level),
  }
}

/**
 * Sum of several days: dry with the product of the days' chances, else lognormal with the sum's mean and variance
 * (mm, mm²). Source: [Fenton1960], moments matched.
 */
export function sumLaw(meanMm: number, varianceMm2: number, dry: number): AmountLaw {
  const wet = Math.max(1e-9, 1 - dry)
  const wetMean = meanMm / wet
  const wetVariance = Math.max(1e-6, (varianceMm2 + meanMm * meanMm) / wet - wetMean * wetMean)
  const logVariance = Math.log(1 + wetVariance / (wetMean * wetMean + 1e-12))
  const sd = Math.sqrt(logVariance)
  const center = Math.log(wetMean + 1e-12) - logVariance / 2
  return {
    dry,
    mass: (lowMm, highMm) => {
      if (highMm <= 0) return dry
      const a = lowMm <= 0 ? Number.NEGATIVE_INFINITY : (Math.log(lowMm) - center) / sd
      const b = (Math.log(highMm) - center) / sd
      const part = a > 0 ? normalCdf(-a) - normalCdf(-b) : normalCdf(b) - normalCdf(a)
      return (lowMm <= 0 ? dry : 0) + wet * part
    },
    quantile: (level) => (level <= dry ? 0 : Math.exp(center + sd * normalQuantile((level - dry) / wet))),
  }
}
