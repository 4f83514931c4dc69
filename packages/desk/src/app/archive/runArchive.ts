/** Runs `check` or `expect` over an archive on worker threads; answers in the order of days, never more than a few ahead. */
import { availableParallelism } from 'node:os'
import { learnModel } from '@gaugewright/science'
import { workerPool } from '../model/workerPool.ts'
import { daysBefore } from './archiveTable.ts'
import type { ArchiveWork, ChunkResult } from './archiveWork.ts'
import { type Chunk, planChunks } from './planChunks.ts'

export interface ArchiveAsk extends Omit<ArchiveWork, 'model'> {
  /** Epoch days, both included. */
  fromDay: number
  toDay: number
  threads?: number
  onProgress?: (daysDone: number, dayCount: number) => void
}

const MOST_THREADS = 2
/** Stretches under way or waiting to be written, per thread. */
const AHEAD = 2

export async function* runArchive(ask: ArchiveAsk): AsyncGenerator<ChunkResult> {
  const threads = ask.threads ?? Math.min(MOST_THREADS, availableParallelism())
  const daysAhead = Math.max(0, ask.fromDay - ask.table.firstDay)
  const chunks = planChunks({ ...ask, daysBefore: daysAhead, threads })
  const isOwn = chunks[0]?.learnBefore !== null
  const { task, gauges, table, sameMorning, levels, points } = ask
  const model = isOwn ? null : learnModel(gauges, lessonsOf(ask))
  const workerData: ArchiveWork = { task, gauges, table, sameMorning, levels, points, model }
  const pool = workerPool('archiveWorker', import.meta.url, Math.min(threads, chunks.length), workerData)
  try {
    const underWay: Promise<ChunkResult>[] = []
    let next = 0
    const start = (): void => {
      const chunk = chunks[next++]
      if (chunk === undefined) return
      const result = pool.run(chunk) as Promise<ChunkResult>
      result.catch(() => undefined)
      underWay.push(result)
    }
    for (let count = 0; count < threads * AHEAD; count++) start()
    let daysDone = 0
    for (const chunk of chunks) {
      const result = await underWay.shift()
      if (result === undefined) break
      start()
      daysDone += daysOf(chunk)
      ask.onProgress?.(daysDone, ask.toDay - ask.fromDay + 1)
      yield result
    }
  } finally {
    await pool.destroy()
  }
}

/** What may be learned from: of a morning what was there before it, else all there is, habits of the days judged too. */
function lessonsOf(ask: ArchiveAsk): ArchiveWork['table'] {
  return ask.sameMorning ? daysBefore(ask.table, ask.fromDay) : ask.table
}

function daysOf(chunk: Chunk): number {
  return chunk.toDay - chunk.fromDay + 1
}
