/**
 * What should have fallen at places without a gauge, by the reports around them as far as each is believed. The reports'
 * say was settled by judge(); here it is kriged to the points, on the scale of scores, and read through their climate.
 */
import { climateAtPoints } from '../climate/climateAtPoints.ts'
import { type ScoreScale, scoreScale } from '../climate/scores.ts'
import { ScienceError } from '../error.ts'
import type { Judgement } from '../mistakes/judgement.ts'
import { mostNeighbours, reserveNeighbours } from '../mistakes/limits.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { type ExpectAsk, type Expectations, expectationWriter, openExpectations } from './expectations.ts'
import type { LatentTable } from './latentTable.ts'
import { pointNeighbourhoods } from './pointNeighbourhood.ts'
import { predictiveOf } from './predictive.ts'
import { computeCavity } from './sweepDay.ts'

/** Points whose neighbourhoods are held at a time: 3 MB. */
const blockSize = 512

/**
 * @param judgement  of the days asked for, with believingModel() where expectations are the aim
 * @param points     on the gauges' plane, m; elevation NaN where unknown
 * @returns a place for each point, in their order; where the judgement was of mornings, by nothing later than the day
 * @throws {ScienceError} TOO_FEW_POINTS without any gauge; OUT_OF_DOMAIN for levels that do not ascend between 0 and 1
 * @remarks about 30 µs a point and day, and 0.2 ms a point
 */
export function expectAtPoints(judgement: Judgement, points: GaugeSet, ask: ExpectAsk): Expectations {
  const { gauges, latent, sameMorning } = judgement
  const { table, model } = latent
  const n = table.gaugeCount
  if (n === 0) throw new ScienceError('TOO_FEW_POINTS', 'no gauges to expect anything from')
  const count = points.ids.length
  const out = openExpectations(count, table, ask)
  const write = expectationWriter(out)
  const most = mostNeighbours(n)
  const scales = monthScales(gauges, judgement, points)
  const neighbourhoods = pointNeighbourhoods(gauges, model.correlation, points, most + reserveNeighbours)
  const view = withOwnCavities(latent, blockSize)
  const firstRow = out.firstDay - table.firstDay
  for (let from = 0; from < count; from += blockSize) {
    const until = Math.min(count, from + blockSize)
    const hood = neighbourhoods(from, until)
    for (let d = 0; d < out.dayCount; d++) {
      const row = firstRow + d
      const sweep = { most, latestRow: sameMorning ? row : table.dayCount - 1, damping: 1 }
      for (let p = from; p < until; p++) {
        computeCavity(view, hood, row, p - from, sweep)
        const i = row * n + p - from
        const scale = scales[p * 12 + latent.monthOfDay[row]!]!
        const said = predictiveOf(view.cavityMean[i]!, view.cavityVariance[i]!, view.spread[i]!, scale, model.spread)
        write(d * count + p, said)
        out.neighbourCount[d * count + p] = view.used[i]!
      }
    }
  }
  return out
}

/** Score scale of point p in month m: index p * 12 + m. */
function monthScales(gauges: GaugeSet, judgement: Judgement, points: GaugeSet): ScoreScale[] {
  const climate = climateAtPoints(gauges, judgement.latent.model.climate, points)
  return Array.from({ length: points.ids.length * 12 }, (_, i) => scoreScale(climate, Math.floor(i / 12), i % 12))
}

/**
 * The same reports and sites, with cavities of its own: computeCavity writes a point's where a gauge's of that number
 * would stand (past the row's end for high numbers), and it is read at once.
 */
function withOwnCavities(latent: LatentTable, extra: number): LatentTable {
  const cells = latent.cavityMean.length + extra
  return {
    ...latent,
    cavityMean: new Float64Array(cells),
    cavityVariance: new Float64Array(cells),
    used: new Uint8Array(cells),
    spread: new Float64Array(cells),
  }
}
