/**
 * The habits of a network's gauges: found in a thread of their own, kept in the ledger's cache, and found anew when the
 * model changes and each week. Until then those of last week are shown.
 */
import { deserialize, serialize } from 'node:v8'
import { epochDayFromIso, type IsoDay, isoFromEpochDay, type NetworkHabits } from '@gaugewright/science'
import type { Ledger } from '../../ports/ledger.ts'
import { historyTable } from '../model/historyTable.ts'
import type { LearnedModel } from '../model/learnedModel.ts'
import { runInWorker } from '../model/runInWorker.ts'

export interface KeptHabits {
  habits: NetworkHabits
  /** The part of the record that was looked at. */
  firstDay: IsoDay
  lastDay: IsoDay
}

export interface KeptHabitsAsk {
  networkId: string
  learned: LearnedModel
  range: { firstDay: IsoDay; lastDay: IsoDay }
  /** Wait for what is newest, rather than take what is kept and look anew in the background. */
  wait: boolean
  signal?: AbortSignal
}

const CACHE_KEY = 'habits'
const MAKE = 1
/** Days of record looked at: three years. */
const MOST_DAYS = 1100
const WEEK_DAYS = 7

type Finding = { version: string; found: Promise<KeptHabits> }
const inMemory = new WeakMap<Ledger, Finding>()
/** What is shown until the finding in memory is done. */
const lastKnown = new WeakMap<Ledger, { gaugesKey: string; kept: KeptHabits }>()

export async function keptHabits(ledger: Ledger, ask: KeptHabitsAsk): Promise<KeptHabits> {
  const version = versionOf(ask)
  const { gaugesKey } = ask.learned
  const cached = await ledger.cached(ask.networkId, CACHE_KEY)
  const kept = cached === null ? null : habitsFromText(cached.body)
  if (kept !== null && cached?.version === version) return kept
  if (kept !== null && cached?.version.includes(gaugesKey)) lastKnown.set(ledger, { gaugesKey, kept })
  const running = inMemory.get(ledger)
  const finding = running?.version === version ? running : { version, found: findAndKeep(ledger, ask, version) }
  inMemory.set(ledger, finding)
  finding.found.catch(() => inMemory.delete(ledger))
  const known = lastKnown.get(ledger)
  return ask.wait || known?.gaugesKey !== gaugesKey ? finding.found : known.kept
}

async function findAndKeep(ledger: Ledger, ask: KeptHabitsAsk, version: string): Promise<KeptHabits> {
  const { learned, range, signal } = ask
  const last = epochDayFromIso(range.lastDay)
  const firstDay = isoFromEpochDay(Math.max(epochDayFromIso(range.firstDay), last - MOST_DAYS + 1))
  const { gaugeSet: gauges, indexOf, model, decided } = learned
  const record = await historyTable(ledger, ask.networkId, indexOf, firstDay, range.lastDay, signal)
  const habits = await runInWorker<NetworkHabits>(
    'findHabitsWorker',
    import.meta.url,
    { gauges, record, model, decided },
    signal,
  )
  const kept = { habits, firstDay, lastDay: range.lastDay }
  await ledger.saveCached(ask.networkId, CACHE_KEY, version, serialize(kept).toString('base64'))
  return kept
}

/** The decisions behind a model change from day to day, and habits not: they are left out of its name. */
function versionOf({ learned, range }: KeptHabitsAsk): string {
  const week = Math.floor(epochDayFromIso(range.lastDay) / WEEK_DAYS)
  return `make ${MAKE}, week ${week}, ${learned.learnedVersion}`
}

/** @returns null where the text cannot be read: then habits are found anew, since they are only derived */
function habitsFromText(text: string): KeptHabits | null {
  try {
    return deserialize(Buffer.from(text, 'base64')) as KeptHabits
  } catch {
    return null
  }
}
