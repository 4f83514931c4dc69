/**
 * The odds that the rule would have met on past mornings: the readings as they were reported, each day judged by nothing
 * later than itself, with what the network has learned by now. On threads of their own, a month at a time.
 */
import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { isoFromEpochDay, type RuleMornings } from '@gaugewright/science'
import { Piscina } from 'piscina'
import type { Ledger, NetworkSettings } from '../../ports/ledger.ts'
import type { LearnedModel } from '../model/learnedModel.ts'
import { workerEntry } from '../model/workerEntry.ts'
import { acceptedRecord } from '../morning/acceptedRecord.ts'
import { morningTable } from '../morning/morningTable.ts'
import { isComparable } from '../morning/readingWindow.ts'
import type { OddsOfStretch, OddsStretch, OddsWork } from './oddsWork.ts'

export interface MorningsAsk {
  network: NetworkSettings
  learned: LearnedModel
  /** Epoch days, both included. */
  fromDay: number
  toDay: number
  signal?: AbortSignal
  onProgress?: (daysDone: number, dayCount: number) => void
}

export interface OddsOfMornings extends RuleMornings {
  cannotTell: number
}

const STRETCH_DAYS = 31
/** Days of context before a stretch. */
const BEFORE_DAYS = 12
const MOST_THREADS = 2

/** @throws the signal's reason when stopped; what a thread failed with */
export async function oddsOfMornings(ledger: Ledger, ask: MorningsAsk): Promise<OddsOfMornings> {
  const { learned, fromDay, toDay, signal } = ask
  const dayCount = toDay - fromDay + 1
  const starts = Array.from({ length: Math.ceil(dayCount / STRETCH_DAYS) }, (_, i) => fromDay + i * STRETCH_DAYS)
  const work: OddsWork = { gauges: learned.gaugeSet, model: learned.model }
  const threads = Math.min(MOST_THREADS, availableParallelism(), starts.length)
  const entry = workerEntry('oddsWorker', import.meta.url)
  const pool = new Piscina({
    filename: fileURLToPath(entry.file),
    name: 'workOn',
    execArgv: entry.execArgv,
    argv: entry.argv,
    minThreads: threads,
    maxThreads: threads,
    workerData: work,
  })
  // A thread that fails while it has no task tells the pool, and nobody listening would end the whole desk.
  const failed = new Promise<never>((_, fail) => {
    pool.on('error', fail)
  })
  failed.catch(() => undefined)
  let daysDone = 0
  const judgeFrom = async (start: number): Promise<OddsOfStretch> => {
    const last = Math.min(toDay, start + STRETCH_DAYS - 1)
    const stretch = await stretchFrom(ledger, ask, start, last)
    const odds = (await pool.run(stretch, signal === undefined ? {} : { signal })) as OddsOfStretch
    daysDone += last - start + 1
    ask.onProgress?.(daysDone, dayCount)
    return odds
  }
  try {
    ask.onProgress?.(0, dayCount)
    const parts: OddsOfStretch[] = new Array(starts.length)
    let next = 0
    const takeTurns = async (): Promise<void> => {
      for (let turn = next++; turn < starts.length; turn = next++) {
        signal?.throwIfAborted()
        parts[turn] = await judgeFrom(starts[turn] ?? fromDay)
      }
    }
    await Promise.race([failed, Promise.all(Array.from({ length: threads }, takeTurns))])
    return joined(parts, fromDay, dayCount)
  } finally {
    await pool.destroy()
  }
}

async function stretchFrom(ledger: Ledger, ask: MorningsAsk, fromDay: number, toDay: number): Promise<OddsStretch> {
  const { network, learned } = ask
  const first = fromDay - BEFORE_DAYS
  const readings = await ledger.readings(network.id, isoFromEpochDay(first), isoFromEpochDay(toDay))
  const asReported = acceptedRecord(
    readings.filter((reading) => isComparable(network, reading)),
    [],
  )
  const { table } = morningTable(asReported, learned.indexOf, first, toDay - first + 1)
  return { table, fromDay, toDay }
}

function joined(parts: readonly OddsOfStretch[], fromDay: number, morningCount: number): OddsOfMornings {
  const count = parts.reduce((sum, part) => sum + part.day.length, 0)
  const all = { pStands: new Float64Array(count), morning: new Int32Array(count), morningCount, cannotTell: 0 }
  let at = 0
  for (const { day, pStands, cannotTell } of parts) {
    all.pStands.set(pStands, at)
    for (const one of day) all.morning[at++] = one - fromDay
    all.cannotTell += cannotTell
  }
  return all
}
