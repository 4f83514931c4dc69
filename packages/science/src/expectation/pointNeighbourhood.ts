/**
 * For points without a gauge the reports that tell most about them; as buildNeighbourhood for the gauges, but of gauges
 * only. A point fits its surroundings as the network's middle gauge does, dates its days as most do, and has no pairs.
 */
import type { GaugeSet } from '../network/gaugeSet.ts'
import { NearestIndex } from '../space/nearest.ts'
import { sortedValues } from '../stats/quantile.ts'
import type { Correlation } from './correlation.ts'
import { type Neighbourhood, reportCorrelation, validBlend } from './neighbourhood.ts'

/** Least correlation for which a report is worth having. */
const leastCorrelation = 0.03
/** A day before or after counts as a neighbour from this part of the same day's correlation on. */
const laggedPart = 0.45
const reserve = 16

interface Candidate {
  gauge: number
  lag: number
  value: number
}

/** @returns neighbourhoods of points from…until - 1, the first at index 0 */
export function pointNeighbourhoods(
  gauges: GaugeSet,
  correlation: Correlation,
  points: GaugeSet,
  size: number,
): (from: number, until: number) => Neighbourhood {
  const n = gauges.ids.length
  const between = reportCorrelation(joined(gauges, points), withPoints(correlation, points.ids.length))
  const index = new NearestIndex(gauges.xM, gauges.yM)
  const near = new Int32Array(size + reserve)
  const stride = size + 1
  const own = new Float64Array(stride * stride)
  const formula = new Float64Array(stride * stride)
  return (from, until) => {
    const out = emptyNeighbourhood(until - from, size)
    for (let p = from; p < until; p++) {
      const held = index.nearestInto(points.xM[p]!, points.yM[p]!, near.length, near)
      const list: Candidate[] = []
      for (let k = 0; k < held; k++) {
        const gauge = near[k]!
        const same = between.blended(n + p, gauge, 0)
        for (let lag = -1; lag <= 1; lag++) {
          const value = lag === 0 ? same : between.blended(n + p, gauge, lag)
          if (value > leastCorrelation && (lag === 0 || value >= laggedPart * same)) list.push({ gauge, lag, value })
        }
      }
      list.sort((a, b) => b.value - a.value || a.gauge - b.gauge || a.lag - b.lag)
      const at = [{ gauge: n + p, lag: 0, value: 1 }, ...list.slice(0, size)]
      for (let a = 0; a < at.length; a++) {
        for (let b = 0; b < a; b++) {
          const lag = at[b]!.lag - at[a]!.lag
          own[a * stride + b] = between.blended(at[a]!.gauge, at[b]!.gauge, lag)
          formula[a * stride + b] = between.formula(at[a]!.gauge, at[b]!.gauge, lag)
        }
      }
      const trust = validBlend(own, formula, at.length, stride)
      for (let k = 0; k < own.length; k++) own[k] = trust * own[k]! + (1 - trust) * formula[k]!
      writeCandidates(out, p - from, at, own)
    }
    return out
  }
}

/** @param among  correlations, index a * (size + 1) + b for b < a; candidate 0 is the point itself */
function writeCandidates(out: Neighbourhood, point: number, at: readonly Candidate[], among: Float64Array): void {
  const { size } = out
  for (let a = 1; a < at.length; a++) {
    const c = point * size + a - 1
    out.gauge[c] = at[a]!.gauge
    out.lagDays[c] = at[a]!.lag
    out.withGauge[c] = among[a * (size + 1)]!
    out.among[c * size + a - 1] = 1
    for (let b = 1; b < a; b++) {
      out.among[c * size + b - 1] = among[a * (size + 1) + b]!
      out.among[(point * size + b - 1) * size + a - 1] = among[a * (size + 1) + b]!
    }
  }
}

function emptyNeighbourhood(count: number, size: number): Neighbourhood {
  return {
    size,
    gauge: new Int32Array(count * size).fill(-1),
    lagDays: new Int8Array(count * size),
    withGauge: new Float32Array(count * size),
    among: new Float32Array(count * size * size),
  }
}

function joined(gauges: GaugeSet, points: GaugeSet): GaugeSet {
  return {
    ids: [...gauges.ids, ...points.ids],
    xM: followed(gauges.xM, points.xM),
    yM: followed(gauges.yM, points.yM),
    elevationM: followed(gauges.elevationM, points.elevationM),
  }
}

function withPoints(correlation: Correlation, count: number): Correlation {
  const sorted = sortedValues(correlation.fit)
  const usualFit = sorted[sorted.length >> 1] ?? 1
  return {
    ...correlation,
    fit: followed(correlation.fit, new Float64Array(count).fill(usualFit)),
    offsetDays: followed(correlation.offsetDays, new Float64Array(count)),
  }
}

function followed(first: Float64Array, second: Float64Array): Float64Array {
  const out = new Float64Array(first.length + second.length)
  out.set(first)
  out.set(second, first.length)
  return out
}
