/**
 * The drawn shape of an expectation: a smooth density over a square-root axis from its quantiles, with the chance of dry
 * kept apart. Smoothing is for the eye only; the figures beside the drawing are the quantiles themselves. Amounts in mm.
 */
import type { DayEvidence } from '@gaugewright/contract'

export type ExpectedShape = {
  dryChance: number
  /** Upper end of the axis, above the 0.99 quantile and every mark. */
  axisMaxMm: number
  /** Points of the density: amount and height, the tallest 1. Empty when (almost) all chance is dry. */
  density: { mm: number; height: number }[]
  p10Mm: number
  p50Mm: number
  p90Mm: number
}

/** Quantile at a level, straight between the given ones, flat outside. `levels` must be sorted; NaN when there are none. */
export function quantileAt(levels: readonly number[], mm: readonly number[], level: number): number {
  if (levels.length === 0) return Number.NaN
  const above = levels.findIndex((l) => l >= level)
  if (above < 0) return mm[mm.length - 1]!
  if (above === 0) return mm[0]!
  const share = (level - levels[above - 1]!) / (levels[above]! - levels[above - 1]!)
  return mm[above - 1]! + share * (mm[above]! - mm[above - 1]!)
}

/** Position 0…1 on the square-root axis. */
export function rootShare(mm: number, axisMaxMm: number): number {
  return Math.sqrt(Math.max(0, mm) / axisMaxMm)
}

export function expectedShape(
  expectation: DayEvidence['expectation'],
  marksMm: readonly number[],
  stepMm: number,
): ExpectedShape {
  const { levels, mm, dryChance } = expectation
  const at = (level: number) => quantileAt(levels, mm, level)
  const highest = Math.max(0, mm[mm.length - 1] ?? 0, ...marksMm)
  const axisMaxMm = Math.max(highest * 1.12, stepMm * 10)
  const samples: number[] = []
  const first = levels[0] ?? 0
  const last = levels[levels.length - 1] ?? 1
  for (let i = 0; i < 240; i += 1) {
    const level = first + ((i + 0.5) / 240) * (last - first)
    if (level > dryChance) samples.push(rootShare(at(level), axisMaxMm))
  }
  return {
    dryChance,
    axisMaxMm,
    density: smoothDensity(samples, axisMaxMm),
    p10Mm: at(0.1),
    p50Mm: at(0.5),
    p90Mm: at(0.9),
  }
}

/** Gaussian kernel density of positions on the axis; the width follows Silverman's rule, at least one hundredth. */
function smoothDensity(samples: readonly number[], axisMaxMm: number): { mm: number; height: number }[] {
  if (samples.length < 5) return []
  const mean = samples.reduce((a, b) => a + b, 0) / samples.length
  const sd = Math.sqrt(samples.reduce((a, b) => a + (b - mean) ** 2, 0) / samples.length)
  const width = Math.max(0.01, 1.06 * sd * samples.length ** -0.2)
  const heights = Array.from({ length: 141 }, (_, i) => {
    const x = i / 140
    return { x, h: samples.reduce((sum, s) => sum + Math.exp(-0.5 * ((x - s) / width) ** 2), 0) }
  })
  const tallest = Math.max(...heights.map(({ h }) => h))
  return heights.map(({ x, h }) => ({ mm: x * x * axisMaxMm, height: h / tallest }))
}

/** Round values for the axis: 0 and 3 to 6 steps of 1, 2 or 5, thinned where the square root crowds them. */
export function axisTicks(axisMax: number): number[] {
  const ticks = [0]
  for (let power = -3; power <= 4; power += 1)
    for (const digit of [1, 2, 5]) {
      const value = Number((digit * 10 ** power).toPrecision(1))
      if (value <= axisMax && Math.sqrt(value / axisMax) - Math.sqrt(ticks[ticks.length - 1]! / axisMax) >= 0.15)
        ticks.push(value)
    }
  return ticks
}
