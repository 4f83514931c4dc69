/** Gauges as the kernels see them: positions on one metric plane, elevation NaN where unknown. */
export interface GaugeSet {
  ids: readonly string[]
  xM: Float64Array
  yM: Float64Array
  elevationM: Float64Array
}
