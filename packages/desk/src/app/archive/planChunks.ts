/** How an archive is cut into stretches of days for the worker threads, and from what each learns its model. */

export interface Chunk {
  fromDay: number
  toDay: number
  /**
   * Epoch day before which the stretch may learn, where nothing later may be used; null where one model, learned before
   * the work begins, serves all stretches.
   */
  learnBefore: number | null
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
/** Mornings: the model is learned anew when there is so much more to learn from, and once a year, for habits change. */
const RELEARN_DAYS = 365
const FIRST_DAYS = 15
const MORE_SHARE = 0.25

export function planChunks(ask: ChunkAsk): Chunk[] {
  if (!ask.sameMorning) return cut(ask.fromDay, ask.toDay, ask.threads, null)
  const chunks: Chunk[] = []
  for (let fromDay = ask.fromDay; fromDay <= ask.toDay; ) {
    const known = ask.daysBefore + fromDay - ask.fromDay
    const days = Math.min(RELEARN_DAYS, Math.max(FIRST_DAYS, Math.ceil(MORE_SHARE * known)))
    const toDay = Math.min(ask.toDay, fromDay + days - 1)
    chunks.push(...cut(fromDay, toDay, 1, fromDay))
    fromDay = toDay + 1
  }
  return chunks
}

/** Even stretches, as many as keep every thread at work. */
function cut(fromDay: number, toDay: number, threads: number, learnBefore: number | null): Chunk[] {
  const dayCount = toDay - fromDay + 1
  const rounds = Math.max(1, Math.ceil(dayCount / (threads * LONGEST_DAYS)))
  const size = Math.max(SHORTEST_DAYS, Math.ceil(dayCount / (threads * rounds)))
  const chunks: Chunk[] = []
  for (let from = fromDay; from <= toDay; from += size) {
    chunks.push({ fromDay: from, toDay: Math.min(toDay, from + size - 1), learnBefore })
  }
  return chunks
}
