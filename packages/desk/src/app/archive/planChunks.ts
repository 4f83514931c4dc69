/** How an archive is cut into stretches of days for the worker threads, and from what each learns its model. */

export interface Chunk {
  fromDay: number
  toDay: number
  /**
   * `once`: the model learned from all that may be learned from, before the work begins. `own`: learned from the days
   * before this chunk alone, since nothing later may be used and there is no long history.
   */
  model: 'once' | 'own'
}

export interface ChunkAsk {
  fromDay: number
  toDay: number
  sameMorning: boolean
  /** Days with readings before `fromDay`. */
  daysBefore: number
  threads: number
}

const LONGEST_DAYS = 90
const SHORTEST_DAYS = 8
/** With this much before the first day judged, the model is learned once from it, and later days teach little more. */
export const enoughHistoryDays = 365
const OWN_MODEL_DAYS = 15

export function planChunks(ask: ChunkAsk): Chunk[] {
  const dayCount = ask.toDay - ask.fromDay + 1
  const isOwn = ask.sameMorning && ask.daysBefore < enoughHistoryDays
  const rounds = Math.ceil(dayCount / (ask.threads * LONGEST_DAYS))
  const even = Math.ceil(dayCount / (ask.threads * Math.max(1, rounds)))
  const size = isOwn ? OWN_MODEL_DAYS : Math.max(SHORTEST_DAYS, even)
  const chunks: Chunk[] = []
  for (let fromDay = ask.fromDay; fromDay <= ask.toDay; fromDay += size) {
    chunks.push({ fromDay, toDay: Math.min(ask.toDay, fromDay + size - 1), model: isOwn ? 'own' : 'once' })
  }
  return chunks
}
