/** Round amounts at which isohyets are drawn, in the network's unit: about six, never more than nine. */
const mmPerInch = 25.4

/** Steps people find round: 1, 2 or 5 times a power of ten, and 25. */
const steps = [0.01, 0.02, 0.05, 0.1, 0.2, 0.25, 0.5, 1, 2, 5, 10, 20, 25, 50, 100, 200, 250, 500]

/**
 * @param largestMm  largest amount of the field
 * @returns levels in mm, ascending: even steps, led by a low one (1 mm, 0.05 in) where the first step is well above it
 */
export function isohyetLevels(largestMm: number, unit: 'mm' | 'in'): number[] {
  const perUnit = unit === 'in' ? mmPerInch : 1
  const largest = largestMm / perUnit
  const least = unit === 'in' ? 0.02 : 0.5
  if (!(largest >= least)) return []
  const step = steps.find((s) => s >= least && largest / s < 8) ?? largest / 7
  const low = unit === 'in' ? 0.05 : 1
  const levels: number[] = low <= 0.4 * step ? [low] : []
  for (let k = 1; k * step <= largest; k++) levels.push(k * step)
  // Whole multiples in decimal, free of binary dust.
  return levels.map((level) => Number((level * perUnit).toPrecision(12)))
}
