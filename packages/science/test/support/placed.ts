import type { GaugeSet } from '../../src/network/gaugeSet.ts'

/** Gauges at places given in metres, without elevation. */
export function placed(xM: number[], yM: number[]): GaugeSet {
  return {
    ids: xM.map((_, k) => `g${k}`),
    xM: Float64Array.from(xM),
    yM: Float64Array.from(yM),
    elevationM: new Float64Array(xM.length).fill(Number.NaN),
  }
}
