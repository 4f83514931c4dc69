/**
 * Kriging of square roots as a predictive distribution: amount = max(0, N(estimate, deviation²))². The deviation joins
 * the kriging variance with how far estimates were off at the other gauges of the day, and two numbers are fitted by
 * least CRPS on training days: a factor for days as rough as most, and how far the day's own roughness counts.
 */
import type { DailyTable, GaugeSet } from '@gaugewright/science'
import type { Baseline } from './baseline.ts'
import { krigeRoots } from './krigeRoots.ts'
import { normalCdf } from './normalCdf.ts'
import { fitRootVariogram, type RootVariogram, type RootVariogramKind } from './rootVariogram.ts'
import { crpsOfSquaredCensoredMm } from './squaredCensoredGaussian.ts'

const neighbourCount = 30

export interface RootPrediction {
  variogram: RootVariogram
  factor: number
  /** Deviation that no day falls below, in roots of mm. */
  floorRoot: number
  /** Per cell of the table; NaN where nothing can be said. */
  meanRoot: Float64Array
  deviationRoot: Float64Array
}

/** @param training  days on which the variogram and the two numbers are fitted */
export function predictByRootKriging(
  gauges: GaugeSet,
  table: DailyTable,
  training: { fromDay: number; toDay: number },
  kind: RootVariogramKind,
): RootPrediction {
  const variogram = fitRootVariogram(gauges, table, training, kind)
  const { meanRoot, relativeVariance } = krigeRoots(gauges, table, variogram, neighbourCount)
  const roughness = roughnessOfOthers(table, meanRoot, relativeVariance)
  const cells = trainingCells(table, meanRoot, roughness, training)
  let best = { factor: 1, floorRoot: 0.05, crpsMm: Number.POSITIVE_INFINITY }
  const tryOut = (factor: number, floorRoot: number): void => {
    let sum = 0
    for (const cell of cells) {
      const deviation = deviationOf(roughness[cell]!, relativeVariance[cell]!, factor, floorRoot)
      sum += crpsOfSquaredCensoredMm(meanRoot[cell]!, deviation, table.amountMm[cell]!)
    }
    if (sum / cells.length < best.crpsMm) best = { factor, floorRoot, crpsMm: sum / cells.length }
  }
  for (const floorRoot of [0.02, 0.05, 0.1, 0.2]) for (let f = 0.5; f < 1.6; f += 0.1) tryOut(f, floorRoot)
  for (const shift of [-0.06, -0.03, 0.03, 0.06]) tryOut(best.factor + shift, best.floorRoot)
  const deviationRoot = roughness.map((rough, cell) =>
    deviationOf(rough, relativeVariance[cell]!, best.factor, best.floorRoot),
  )
  return { variogram, factor: best.factor, floorRoot: best.floorRoot, meanRoot, deviationRoot }
}

function deviationOf(roughness: number, relativeVariance: number, factor: number, floorRoot: number): number {
  return Math.sqrt((factor * roughness) ** 2 * relativeVariance + floorRoot * floorRoot)
}

/** Root of the day's mean of (error² / kriging variance), leaving out the gauge itself. */
function roughnessOfOthers(table: DailyTable, meanRoot: Float64Array, relativeVariance: Float64Array): Float64Array {
  const n = table.gaugeCount
  const roughness = new Float64Array(meanRoot.length).fill(Number.NaN)
  const squares = new Float64Array(n)
  for (let row = 0; row < table.dayCount; row++) {
    let sum = 0
    let count = 0
    for (let gauge = 0; gauge < n; gauge++) {
      const cell = row * n + gauge
      const error = Math.sqrt(table.amountMm[cell]!) - Math.max(0, meanRoot[cell]!)
      squares[gauge] = Number.isNaN(error) ? 0 : (error * error) / relativeVariance[cell]!
      if (Number.isNaN(error)) continue
      sum += squares[gauge]!
      count++
    }
    for (let gauge = 0; gauge < n; gauge++) {
      const cell = row * n + gauge
      if (Number.isNaN(meanRoot[cell]!)) continue
      const others = Number.isNaN(table.amountMm[cell]!) ? count : count - 1
      roughness[cell] = others > 0 ? Math.sqrt(Math.max(0, sum - squares[gauge]!) / others) : Number.NaN
    }
  }
  return roughness
}

/** Cells with a reading and a prediction on training days, thinned evenly to about 40,000. */
function trainingCells(
  table: DailyTable,
  meanRoot: Float64Array,
  roughness: Float64Array,
  training: { fromDay: number; toDay: number },
): number[] {
  const first = (training.fromDay - table.firstDay) * table.gaugeCount
  const last = (training.toDay - table.firstDay + 1) * table.gaugeCount
  const cells: number[] = []
  for (let cell = first; cell < last; cell++)
    if (!Number.isNaN(table.amountMm[cell]! + meanRoot[cell]! + roughness[cell]!)) cells.push(cell)
  const stride = Math.max(1, Math.floor(cells.length / 40_000))
  return cells.filter((_, index) => index % stride === 0)
}

/** CRPS per cell in mm; NaN where there is no reading or no prediction. */
export function crpsOfRootPrediction(prediction: RootPrediction, table: DailyTable): Float64Array {
  return prediction.meanRoot.map((mean, cell) => {
    const observedMm = table.amountMm[cell]!
    const deviation = prediction.deviationRoot[cell]!
    return Number.isNaN(mean + observedMm + deviation)
      ? Number.NaN
      : crpsOfSquaredCensoredMm(mean, deviation, observedMm)
  })
}

/** The same as a check: -log10 of the smaller tail in which a reading lies. Common practice in geostatistics. */
export const rootKrigingTails: Baseline = {
  name: 'kriging of roots, tails',
  source: 'common practice',
  score({ gauges, table }) {
    const lastDay = table.firstDay + Math.ceil(table.dayCount / 2) - 1
    const training = { fromDay: table.firstDay, toDay: lastDay }
    const prediction = predictByRootKriging(gauges, table, training, 'exponential')
    return prediction.meanRoot.map((mean, cell) => {
      const observedMm = table.amountMm[cell]!
      const deviation = Math.max(0.3, prediction.deviationRoot[cell]!)
      if (Number.isNaN(mean + observedMm + deviation)) return Number.NaN
      const z = (Math.sqrt(observedMm) - mean) / deviation
      const tail = observedMm === 0 ? normalCdf(z) : Math.min(normalCdf(z), normalCdf(-z))
      return -Math.log10(Math.max(1e-300, tail))
    })
  },
}
