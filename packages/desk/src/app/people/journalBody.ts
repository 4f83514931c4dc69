/** Entries of the journal, read against the shapes of the contract. */
import { type JournalBody, type JournalKind, journalBodies } from '@gaugewright/contract'
import type { JournalEntry } from '../../ports/journal.ts'

export interface Read<K extends JournalKind> {
  entry: JournalEntry
  body: JournalBody<K>
}

/** Those of one kind, in their order. An entry of an older shape that no longer fits is left out, and stays in the ledger. */
export function ofKind<K extends JournalKind>(entries: readonly JournalEntry[], kind: K): Read<K>[] {
  const found: Read<K>[] = []
  for (const entry of entries) {
    if (entry.kind !== kind) continue
    const read = journalBodies[kind].safeParse(entry.body)
    if (read.success) found.push({ entry, body: read.data as JournalBody<K> })
  }
  return found
}

/** The same without those that were taken back. */
export function standing<K extends JournalKind>(entries: readonly JournalEntry[], kind: K): Read<K>[] {
  return ofKind(entries, kind).filter(({ entry }) => entry.takenBack === null)
}
