import type { JournalBody, JournalKind } from '@gaugewright/contract'
import type { NewJournalEntry } from '../../ports/journal.ts'
import type { Ports } from '../../ports/ports.ts'
import type { Doer } from '../access/doer.ts'

/** Who wrote something down, as the journal keeps it. */
export function writer(doer: Doer): string {
  return doer.personId ?? ''
}

/** A new entry; its body is of its kind. */
export function newEntry<K extends JournalKind>(
  ports: Pick<Ports, 'clock' | 'newId'>,
  networkId: string,
  about: string,
  kind: K,
  body: JournalBody<K>,
  { by, id }: { by: string; id?: string },
): NewJournalEntry {
  return { id: id ?? ports.newId(), networkId, about, kind, atUtc: ports.clock.nowUtc(), by, body }
}
