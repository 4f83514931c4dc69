/**
 * Predictive distributions of one stretch of days: of each gauge from all others, or at points. A row per place and
 * day, whether or not a gauge was read.
 */
import {
  believingModel,
  expectAtPoints,
  expectLeaveOneOut,
  isoFromEpochDay,
  judge,
  type Model,
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
  const { gauges, points, levels, sameMorning } = work
  const { fromDay, toDay } = chunk
  const judgement = judge(gauges, paddedDays(work, chunk), believingModel(model), { fromDay, toDay, sameMorning })
  const ask = { fromDay, toDay, levels }
  const expected = points === null ? expectLeaveOneOut(judgement, ask) : expectAtPoints(judgement, points, ask)
  const codes = (points ?? gauges).ids.map(csvField)
  const lines: string[] = []
  for (let index = 0; index < expected.placeCount * expected.dayCount; index++) {
    const place = index % expected.placeCount
    const day = expected.firstDay + (index - place) / expected.placeCount
    const dry = expected.dryChance[index] ?? Number.NaN
    let line = `${codes[place]},${isoFromEpochDay(day)},${odds(dry)},${depth(expected.meanMm[index] ?? Number.NaN)}`
    for (let level = 0; level < levels.length; level++) {
      line += `,${depth(expected.quantilesMm[index * levels.length + level] ?? Number.NaN)}`
    }
    lines.push(line)
  }
  return { text: lines.length === 0 ? '' : `${lines.join('\n')}\n`, rows: lines.length }
}
