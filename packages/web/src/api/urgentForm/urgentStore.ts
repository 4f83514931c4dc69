/** What the phone keeps of urgent reports, in IndexedDB: each filing and photo until the desk has it (and a while after), and whose gauge it is. */
import type { FileUrgentInput, UrgentForm } from '@gaugewright/contract'
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import { filingNaming } from './filingNaming.ts'
import type { KeptFiling, KeptPhoto, KeptUrgent } from './keptUrgent.ts'
import { newUuid } from './newUuid.ts'

type New<K extends KeptUrgent> = Omit<K, 'seq'> & { seq?: number }

interface UrgentSchema extends DBSchema {
  urgent: { key: number; value: New<KeptFiling> | New<KeptPhoto> }
  form: { key: string; value: UrgentForm }
}

const RECEIVED_KEPT_MS = 7 * 86_400_000
let opened: Promise<IDBPDatabase<UrgentSchema>> | null = null

function store(): Promise<IDBPDatabase<UrgentSchema>> {
  opened ??= openDB<UrgentSchema>('gaugewright-urgent', 1, {
    upgrade(database) {
      database.createObjectStore('urgent', { keyPath: 'seq', autoIncrement: true })
      database.createObjectStore('form')
    },
    terminated: () => {
      opened = null
    },
  })
  return opened
}

const waiting = { state: 'waiting', receivedAtUtc: null, problem: null } as const

/** Durable when it resolves: only then may the page say that the report is on the phone. */
export async function keepFiling(filing: FileUrgentInput, madeAtUtc: string): Promise<void> {
  const reportId = filing.updates ?? filing.id
  await add({ what: 'filing', reportId, filing, madeAtUtc, ...waiting })
}

/** Durable when it resolves. */
export async function keepPhoto(reportId: string, jpeg: Blob, madeAtUtc: string): Promise<void> {
  await add({ what: 'photo', reportId, jpeg, sha256: null, madeAtUtc, ...waiting })
}

async function add(kept: New<KeptFiling> | New<KeptPhoto>): Promise<void> {
  const writing = (await store()).transaction('urgent', 'readwrite', { durability: 'strict' })
  await writing.store.add(kept)
  await writing.done
}

/** Oldest first. */
export async function keptUrgent(): Promise<KeptUrgent[]> {
  return (await (await store()).getAll('urgent')) as KeptUrgent[]
}

export async function changeUrgent(kept: KeptUrgent): Promise<void> {
  await (await store()).put('urgent', kept)
}

/**
 * The desk has the photo: in the same step a filing is kept that names it, so that the desk's people see it at once. It
 * says what the newest filing of the report says.
 */
export async function photoReceived(
  photo: KeptPhoto,
  { sha256, receivedAtUtc }: { sha256: string; receivedAtUtc: string },
  nowUtc: string,
): Promise<void> {
  const writing = (await store()).transaction('urgent', 'readwrite', { durability: 'strict' })
  await writing.store.put({ ...photo, jpeg: null, sha256, state: 'received', receivedAtUtc, problem: null })
  const all = (await writing.store.getAll()) as KeptUrgent[]
  const naming = filingNaming(photo.reportId, all, newUuid(), nowUtc)
  if (naming !== null)
    await writing.store.add({ what: 'filing', reportId: photo.reportId, filing: naming, madeAtUtc: nowUtc, ...waiting })
  await writing.done
}

/** What the desk has had for a week the phone need not keep. */
export async function dropOldUrgent(nowMs: number): Promise<void> {
  const database = await store()
  for (const { seq, receivedAtUtc } of await keptUrgent()) {
    const isOld = receivedAtUtc !== null && Date.parse(receivedAtUtc) < nowMs - RECEIVED_KEPT_MS
    if (isOld) await database.delete('urgent', seq)
  }
}

/** @param gauge  code as the page was opened with; empty where none was given */
export async function keepForm(gauge: string, form: UrgentForm): Promise<void> {
  await (await store()).put('form', form, gauge)
}

export async function keptForm(gauge: string): Promise<UrgentForm | undefined> {
  return (await store()).get('form', gauge)
}

/** Leaves nothing of this observer on the phone. Reports that wait are lost: the page asks first. */
export async function forgetUrgent(): Promise<void> {
  const database = await store()
  await Promise.all([database.clear('urgent'), database.clear('form')])
}
