/** Worker thread of `check` and `expect`: takes stretches of days from the pool and answers with CSV lines. */
import { learnModel } from '@gaugewright/science'
import { workerData } from 'piscina'
import { daysBefore } from './archiveTable.ts'
import type { ArchiveWork, ChunkResult } from './archiveWork.ts'
import { checkChunk } from './checkChunk.ts'
import { expectChunk } from './expectChunk.ts'
import type { Chunk } from './planChunks.ts'

export function workOn(chunk: Chunk): ChunkResult {
  const work = workerData as ArchiveWork
  const model = work.model ?? learnModel(work.gauges, daysBefore(work.table, chunk.fromDay))
  return work.task === 'check' ? checkChunk(work, model, chunk) : expectChunk(work, model, chunk)
}
