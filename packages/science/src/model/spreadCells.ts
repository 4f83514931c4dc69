/** Leave-one-out cavities of a sample of readings, each with its cell: what a calibration is fitted to. */
import type { ScoreScale } from '../climate/scores.ts'
import { openLatentTable } from '../expectation/latentTable.ts'
import { buildNeighbourhood } from '../expectation/neighbourhood.ts'
import { computeCavity, type SweepAsk, sweepDay } from '../expectation/sweepDay.ts'
import { reportSeen } from '../mistakes/explainReport.ts'
import type { ReportSeen } from '../mistakes/sources.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { tableRows } from '../network/tableRows.ts'
import type { Model } from './model.ts'

const blockDays = 4
const mostCells = 9000
/** Different days tell more than many gauges of one. */
const fewestBlocks = 24

export interface Cells {
  mean: Float64Array
  variance: Float64Array
  surroundings: Float64Array
  low: Float64Array
  high: Float64Array
  scale: ScoreScale[]
  /** Odds that the reading stands. */
  stands: Float64Array
  report: ReportSeen[]
  count: number
}

/** Leave-one-out cavities of readings from even blocks of days; the middle days of each block are taken. */
export function sampleCells(gauges: GaugeSet, history: DailyTable, model: Model): Cells {
  const n = gauges.ids.length
  const size = Math.min(40, n + 8)
  const hood = buildNeighbourhood(gauges, model.correlation, size)
  const perBlock = n * (blockDays - 2)
  const wanted = Math.max(fewestBlocks, Math.ceil(mostCells / (0.8 * perBlock)))
  const blocks = Math.min(Math.floor(history.dayCount / blockDays), wanted)
  const step = history.dayCount / blocks
  const cells: Cells = {
    mean: new Float64Array(mostCells),
    variance: new Float64Array(mostCells),
    surroundings: new Float64Array(mostCells),
    low: new Float64Array(mostCells),
    high: new Float64Array(mostCells),
    scale: [],
    stands: new Float64Array(mostCells),
    report: [],
    count: 0,
  }
  const keptShare = mostCells / (blocks * perBlock * 0.8)
  const lots = gauges.ids.map(lotOf)
  for (let b = 0; b < blocks; b++) {
    const first = Math.floor(b * step)
    const block = tableRows(history, first, blockDays)
    const latent = openLatentTable(block, model)
    const sweep: SweepAsk = { most: Math.min(32, size), latestRow: blockDays - 1, damping: 0.8 }
    for (let pass = 0; pass < 3; pass++) for (let row = 0; row < blockDays; row++) sweepDay(latent, hood, row, sweep)
    for (let row = 1; row < blockDays - 1; row++) {
      for (let g = 0; g < n; g++) {
        const i = row * n + g
        if (block.spanDays[i] !== 1 || (lots[g]! + 0.618034 * b) % 1 > keptShare || cells.count >= mostCells) continue
        computeCavity(latent, hood, row, g, sweep)
        if (latent.used[i]! < 2) continue
        const k = cells.count++
        cells.mean[k] = latent.cavityMean[i]!
        cells.variance[k] = latent.cavityVariance[i]!
        cells.surroundings[k] = latent.spread[i]!
        cells.low[k] = latent.low[i]!
        cells.high[k] = latent.high[i]!
        cells.report.push(reportSeen(latent, row, g))
        cells.scale.push(latent.scales[g * 12 + latent.monthOfDay[row]!]!)
      }
    }
  }
  return cells
}

/** A number in [0, 1) that goes with the gauge, so that the sample does not depend on the order of gauges (FNV-1a). */
function lotOf(id: string): number {
  let hash = 0x811c9dc5
  for (let k = 0; k < id.length; k++) hash = Math.imul(hash ^ id.charCodeAt(k), 0x01000193) >>> 0
  return hash / 2 ** 32
}
