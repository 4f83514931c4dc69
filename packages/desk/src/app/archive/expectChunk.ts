/**
 * Predictive distributions of one stretch of days: of each gauge from all others, or at points, which take part as
 * places that never reported. A row per place and day, whether or not the gauge was read.
 */
import {
  amountMoments,
  amountQuantile,
  dryChance,
  isoFromEpochDay,
  judge,
  type Model,
  predictiveAt,
} from '@gaugewright/science'
import { csvField } from '../csvField.ts'
import type { ArchiveWork, ChunkResult } from './archiveWork.ts'
import { paddedDays } from './checkChunk.ts'
import { depth, odds } from './csvNumber.ts'
import type { Chunk } from './planChunks.ts'

/** Levels are (k - 0.5) / count. */
export function expectHeader(count: number, isAtPoints: boolean): string {
  const quantiles = Array.from({ length: count }, (_, index) => `q${index + 1}`)
  return `${[isAtPoints ? 'point' : 'gauge', 'day', 'p_dry', 'mean_mm', ...quantiles].join(',')}\n`
}

export function expectChunk(work: ArchiveWork, model: Model, chunk: Chunk): ChunkResult {
  const { gauges, levels, sameMorning } = work
  const table = paddedDays(work, chunk)
  const { latent } = judge(gauges, table, model, { fromDay: chunk.fromDay, toDay: chunk.toDay, sameMorning })
  const codes = gauges.ids.map(csvField)
  const moments = { mean: 0, variance: 0 }
  const lines: string[] = []
  for (let day = chunk.fromDay; day <= chunk.toDay; day++) {
    const row = day - table.firstDay
    if (row < 0 || row >= table.dayCount) continue
    const isoDay = isoFromEpochDay(day)
    for (let place = work.firstPlace; place < gauges.ids.length; place++) {
      const predictive = predictiveAt(latent, row, place)
      amountMoments(predictive, moments)
      let line = `${codes[place]},${isoDay},${odds(dryChance(predictive))},${depth(moments.mean)}`
      for (const level of levels) line += `,${depth(amountQuantile(predictive, level))}`
      lines.push(line)
    }
  }
  return { text: lines.length === 0 ? '' : `${lines.join('\n')}\n`, rows: lines.length }
}
