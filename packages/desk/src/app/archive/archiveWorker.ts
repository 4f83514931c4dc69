/** Worker thread of `check` and `expect`: takes stretches of days from the pool and answers with CSV lines. */
import { learnModel, type Model } from '@gaugewright/science'
import { workerData } from 'piscina'
import { daysBefore } from './archiveTable.ts'
import type { ArchiveWork, ChunkResult } from './archiveWork.ts'
import { checkChunk } from './checkChunk.ts'
import { expectChunk } from './expectChunk.ts'
import type { Chunk } from './planChunks.ts'

let learned: { before: number; model: Model } | null = null

export function workOn(chunk: Chunk): ChunkResult {
  const work = workerData as ArchiveWork
  const model = work.model ?? learnedBefore(work, chunk.learnBefore ?? chunk.fromDay)
  return work.task === 'check' ? checkChunk(work, model, chunk) : expectChunk(work, model, chunk)
}

/** Stretches that learn from the same days share what was learned. */
function learnedBefore(work: ArchiveWork, before: number): Model {
  if (learned?.before !== before) learned = { before, model: learnModel(work.gauges, daysBefore(work.table, before)) }
  return learned.model
}
