/**
 * How much one gauge sharpened the map of a day: the width of what the field leaves open (P90 minus P10) around the gauge,
 * with its reading and without it. Computed from the field itself, on places within the reach of the gauge.
 */
import { ScienceError } from '../error.ts'
import type { DayAmounts } from '../field/fieldDay.ts'
import type { FieldParams } from '../field/fieldParams.ts'
import { fieldWith } from '../field/fieldWith.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'

export interface Sharpening {
  /** Mean width over the places around, mm. */
  withMm: number
  withoutMm: number
  /** Share of the width that the gauge took away; 0 where it took none. */
  share: number
}

const NEAREST = 40

/**
 * @param g        place of the gauge
 * @param reachM   places lie within this distance of it
 * @throws {ScienceError} OUT_OF_DOMAIN where the gauge has no reading on the day
 * @remarks Two fields of at most 41 gauges on 49 places.
 */
export function sharpening(
  params: FieldParams,
  gauges: GaugeSet,
  day: DayAmounts,
  g: number,
  reachM: number,
): Sharpening {
  if (Number.isNaN(day.amountMm[g]!)) throw new ScienceError('OUT_OF_DOMAIN', `gauge ${g} has no reading on the day`)
  const lag = (other: number) => Math.hypot(gauges.xM[other]! - gauges.xM[g]!, gauges.yM[other]! - gauges.yM[g]!)
  const near = Array.from({ length: gauges.xM.length }, (_, other) => other)
    .filter((other) => other !== g && !Number.isNaN(day.amountMm[other]!))
    .sort((a, b) => lag(a) - lag(b))
    .slice(0, NEAREST)
  const side = 7
  const xM: number[] = []
  const yM: number[] = []
  for (let row = 0; row < side; row++) {
    for (let column = 0; column < side; column++) {
      const [dx, dy] = [(2 * column) / (side - 1) - 1, (2 * row) / (side - 1) - 1]
      if (dx * dx + dy * dy > 1.0001) continue
      xM.push(gauges.xM[g]! + dx * reachM)
      yM.push(gauges.yM[g]! + dy * reachM)
    }
  }
  const targets = { xM: Float64Array.from(xM), yM: Float64Array.from(yM) }
  const width = (used: readonly number[]) => {
    const { p10Mm, p90Mm } = fieldWith(params, subset(gauges, used), subsetDay(day, used), targets)
    let sum = 0
    for (let t = 0; t < p10Mm.length; t++) sum += p90Mm[t]! - p10Mm[t]!
    return sum / p10Mm.length
  }
  const withMm = width([g, ...near])
  const withoutMm = width(near)
  return { withMm, withoutMm, share: withoutMm > 0 ? Math.max(0, 1 - withMm / withoutMm) : 0 }
}

function subset(gauges: GaugeSet, used: readonly number[]): GaugeSet {
  const pick = (values: Float64Array) => Float64Array.from(used, (g) => values[g]!)
  return {
    ...gauges,
    ids: used.map((g) => gauges.ids[g]!),
    xM: pick(gauges.xM),
    yM: pick(gauges.yM),
    elevationM: pick(gauges.elevationM),
  }
}

function subsetDay(day: DayAmounts, used: readonly number[]): DayAmounts {
  const { resolutionMm, usual, isTrace } = day
  return {
    amountMm: Float64Array.from(used, (g) => day.amountMm[g]!),
    ...(isTrace !== undefined && { isTrace: Uint8Array.from(used, (g) => isTrace[g]!) }),
    ...(resolutionMm !== undefined && {
      resolutionMm: typeof resolutionMm === 'number' ? resolutionMm : Float64Array.from(used, (g) => resolutionMm[g]!),
    }),
    ...(usual !== undefined && { usual: Float64Array.from(used, (g) => usual[g]!) }),
  }
}
