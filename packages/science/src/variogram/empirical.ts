/**
 * The empirical semivariogram: half the mean squared difference of pairs of gauges, by classes of distance (and of
 * direction when asked). Source: [Matheron1963]. Time O(n²), no pairs are stored.
 */

export interface EmpiricalVariogram {
  /** Per class with at least one pair: pairs, their mean distance and the semivariance. */
  pairs: Float64Array
  lagM: Float64Array
  semivarianceMm2: Float64Array
}

export interface EmpiricalAsk {
  classWidthM: number
  /** Longer distances are left out. */
  mostM: number
  /** Only pairs in this direction, degrees clockwise from north, within the tolerance to either side. */
  bearingDeg?: number
  toleranceDeg?: number
}

/** @param amountMm  NaN values are skipped */
export function empiricalVariogram(
  gauges: { xM: ArrayLike<number>; yM: ArrayLike<number>; amountMm: ArrayLike<number> },
  ask: EmpiricalAsk,
): EmpiricalVariogram {
  const classes = Math.max(1, Math.ceil(ask.mostM / ask.classWidthM))
  const pairs = new Float64Array(classes)
  const distance = new Float64Array(classes)
  const squares = new Float64Array(classes)
  const bearing = ((ask.bearingDeg ?? 0) * Math.PI) / 180
  const leastCosine = ask.bearingDeg === undefined ? -1 : Math.cos(((ask.toleranceDeg ?? 22.5) * Math.PI) / 180)
  const n = gauges.amountMm.length
  for (let i = 0; i < n; i++) {
    if (Number.isNaN(gauges.amountMm[i]!)) continue
    for (let j = 0; j < i; j++) {
      const difference = gauges.amountMm[i]! - gauges.amountMm[j]!
      if (Number.isNaN(difference)) continue
      const dx = gauges.xM[i]! - gauges.xM[j]!
      const dy = gauges.yM[i]! - gauges.yM[j]!
      const h = Math.sqrt(dx * dx + dy * dy)
      if (h > ask.mostM) continue
      if (leastCosine > -1 && Math.abs(dx * Math.sin(bearing) + dy * Math.cos(bearing)) < leastCosine * h) continue
      // A distance on a border belongs to the class below it.
      const k = Math.max(0, Math.ceil(h / ask.classWidthM) - 1)
      pairs[k]! += 1
      distance[k]! += h
      squares[k]! += difference * difference
    }
  }
  const used = Array.from(pairs.keys()).filter((k) => pairs[k]! > 0)
  return {
    pairs: Float64Array.from(used, (k) => pairs[k]!),
    lagM: Float64Array.from(used, (k) => distance[k]! / pairs[k]!),
    semivarianceMm2: Float64Array.from(used, (k) => (0.5 * squares[k]!) / pairs[k]!),
  }
}
