/** The gauges near a place, weighted by 1 / distance, and how high the place stands above them. */
import type { GaugeSet } from '../network/gaugeSet.ts'
import { NearestIndex } from '../space/nearest.ts'

const nearGauges = 8
/** Added to distances, so that a gauge at the point itself weighs most but not alone: gauges differ by their sites. */
const softenM = 1000

/** Gauges near a place, with weights that sum to 1. */
export interface Near {
  count: number
  gauge: Int32Array
  weight: Float64Array
}

/** Look-up of the gauges near a place, leaving one out (-1 for none); the answer is used again for the next place. */
export function nearnessOf(gauges: GaugeSet): (xM: number, yM: number, leftOut: number) => Near {
  const index = new NearestIndex(gauges.xM, gauges.yM)
  const found = new Int32Array(nearGauges + 1)
  const near: Near = { count: 0, gauge: new Int32Array(nearGauges), weight: new Float64Array(nearGauges) }
  return (xM, yM, leftOut) => {
    const held = index.nearestInto(xM, yM, nearGauges + 1, found)
    let total = 0
    near.count = 0
    for (let k = 0; k < held && near.count < nearGauges; k++) {
      const g = found[k]!
      if (g === leftOut) continue
      const weight = 1 / (Math.hypot(gauges.xM[g]! - xM, gauges.yM[g]! - yM) + softenM)
      near.gauge[near.count] = g
      near.weight[near.count++] = weight
      total += weight
    }
    for (let k = 0; k < near.count; k++) near.weight[k]! /= total
    return near
  }
}

/** Metres above the near gauges, as far as elevations are known; 0 where they are not. */
export function heightAbove(gauges: GaugeSet, near: Near, elevationM: number): number {
  if (Number.isNaN(elevationM)) return 0
  let sum = 0
  for (let k = 0; k < near.count; k++) {
    const other = gauges.elevationM[near.gauge[k]!]!
    if (!Number.isNaN(other)) sum += near.weight[k]! * (elevationM - other)
  }
  return sum
}
