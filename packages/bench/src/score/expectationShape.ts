/** Whether leave-one-out expectations are calibrated, in shapes to draw: histograms, reliability of dry, each gauge. */
import type { DailyTable } from '@gaugewright/science'
import { type PitHistogram, pitHistogram } from './pitHistogram.ts'
import { forecastCell } from './quantileCdf.ts'
import { type ReliabilityBin, reliabilityBins } from './reliabilityBins.ts'
import { type ExpectationArrays, quantileAtMm } from './scoreExpectations.ts'

/** How one gauge's readings lie in their expectations, on days where the median expected is 1 mm or more. */
export interface GaugeResidual {
  gauge: number
  count: number
  /** Mean of the randomised transform: 0.5 when calibrated, more where it catches more than expected; NaN for no days. */
  meanPit: number
}

export interface ExpectationShape {
  pitAll: PitHistogram
  /** Where the median expected is 1 mm or more. */
  pitWet: PitHistogram
  /** Chance of dry beside the share of readings of zero. */
  dry: ReliabilityBin[]
  gauges: GaugeResidual[]
}

const wetMedianMm = 1

/**
 * @param stepMm  step in which the network writes amounts; a transform is drawn evenly within the reading's cell
 * @param random  seeded, so that the figures come out the same again
 */
export function expectationShape(
  expectations: ExpectationArrays & { dryChance: Float64Array },
  clean: DailyTable,
  stepMm: number,
  random: () => number,
): ExpectationShape {
  const { levelCount, quantilesMm, dryChance } = expectations
  const all = { pit: [] as number[], day: [] as number[] }
  const wet = { pit: [] as number[], day: [] as number[] }
  const dry = { said: [] as number[], happened: [] as number[], day: all.day }
  const counts = new Int32Array(clean.gaugeCount)
  const sums = new Float64Array(clean.gaugeCount)
  for (let i = 0; i < expectations.gauge.length; i++) {
    const day = expectations.day[i]!
    const gauge = expectations.gauge[i]!
    const observedMm = clean.amountMm[(day - clean.firstDay) * clean.gaugeCount + gauge]!
    const forecast = { quantilesMm, start: i * levelCount, levelCount, dryChance: dryChance[i]! }
    if (Number.isNaN(observedMm) || Number.isNaN(quantilesMm[forecast.start]!)) continue
    const { low, high } = forecastCell(forecast, observedMm, stepMm)
    const pit = low + random() * (high - low)
    all.pit.push(pit)
    all.day.push(day)
    dry.said.push(forecast.dryChance)
    dry.happened.push(observedMm === 0 ? 1 : 0)
    if (quantileAtMm(quantilesMm, forecast.start, levelCount, 0.5) < wetMedianMm) continue
    wet.pit.push(pit)
    wet.day.push(day)
    counts[gauge]! += 1
    sums[gauge]! += pit
  }
  return {
    pitAll: pitHistogram(all.pit, all.day),
    pitWet: pitHistogram(wet.pit, wet.day),
    dry: reliabilityBins(dry),
    gauges: Array.from(counts, (count, gauge) => ({ gauge, count, meanPit: sums[gauge]! / count })),
  }
}
