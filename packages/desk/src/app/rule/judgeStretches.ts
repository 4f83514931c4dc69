/**
 * Stretches of past mornings, judged on threads of their own: whoever serves the screens meanwhile is not kept waiting. A
 * single morning is done before a thread would have begun.
 */
import { availableParallelism } from 'node:os'
import { workerPool } from '../model/workerPool.ts'
import { oddsOfStretch } from './oddsOfStretch.ts'
import type { OddsOfStretch, OddsStretch, OddsWork } from './oddsWork.ts'

export interface StretchToJudge {
  dayCount: number
  /** Made when a thread is free for it: tables are large. */
  make: () => Promise<OddsStretch>
}

export interface StretchesAsk {
  signal?: AbortSignal
  onProgress?: (daysDone: number, dayCount: number) => void
}

const MOST_THREADS = 2

/** @returns the odds of each stretch, in their order. @throws the signal's reason when stopped; what a thread failed with */
export async function judgeStretches(
  work: OddsWork,
  stretches: readonly StretchToJudge[],
  { signal, onProgress }: StretchesAsk = {},
): Promise<OddsOfStretch[]> {
  const dayCount = stretches.reduce((sum, one) => sum + one.dayCount, 0)
  if (stretches.length === 1 && dayCount === 1) return [oddsOfStretch(work, await stretches[0]!.make())]
  const threads = Math.max(1, Math.min(MOST_THREADS, availableParallelism(), stretches.length))
  const pool = workerPool('oddsWorker', import.meta.url, threads, work)
  // A thread that fails while it has no task tells the pool, and nobody listening would end the whole desk.
  const failed = new Promise<never>((_, fail) => {
    pool.on('error', fail)
  })
  failed.catch(() => undefined)
  let daysDone = 0
  try {
    onProgress?.(0, dayCount)
    const parts: OddsOfStretch[] = new Array(stretches.length)
    let next = 0
    const takeTurns = async (): Promise<void> => {
      for (let turn = next++; turn < stretches.length; turn = next++) {
        signal?.throwIfAborted()
        const stretch = stretches[turn]!
        parts[turn] = (await pool.run(await stretch.make(), signal === undefined ? {} : { signal })) as OddsOfStretch
        daysDone += stretch.dayCount
        onProgress?.(daysDone, dayCount)
      }
    }
    await Promise.race([failed, Promise.all(Array.from({ length: threads }, takeTurns))])
    return parts
  } finally {
    await pool.destroy()
  }
}
