/**
 * How often the check at entry may look at the neighbours: for a few amounts of each gauge and day, then no more. Without
 * it somebody could type one amount after another and read off where the question begins. An amount asked about again
 * gets the answer it got, whatever has come in since.
 */
import type { WireEntryQuestion } from '@gaugewright/contract'
import type { Ledger } from '../../ports/ledger.ts'
import { RecentlyUsed } from '../morning/recentlyUsed.ts'

/** A slip, what was meant, and two more tries. */
export const mostAmountsBesideNeighbours = 4
const KEPT_ENTRIES = 20_000

export interface EntryLimit {
  /** Undefined: not asked before. */
  answerBefore(amountKey: string): WireEntryQuestion | null | undefined
  mayAsk(): boolean
  keep(amountKey: string, question: WireEntryQuestion | null): void
}

const kept = new WeakMap<Ledger, RecentlyUsed<Map<string, WireEntryQuestion | null>>>()

/** @param day  last day of the entry */
export function entryLimit(ledger: Ledger, gaugeId: string, day: string): EntryLimit {
  const all = kept.get(ledger) ?? new RecentlyUsed<Map<string, WireEntryQuestion | null>>(KEPT_ENTRIES)
  kept.set(ledger, all)
  const key = `${gaugeId} ${day}`
  const own = all.get(key) ?? new Map<string, WireEntryQuestion | null>()
  all.set(key, own)
  return {
    answerBefore: (amountKey) => own.get(amountKey),
    mayAsk: () => own.size < mostAmountsBesideNeighbours,
    keep: (amountKey, question) => own.set(amountKey, question),
  }
}
