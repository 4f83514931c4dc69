/** What the phone keeps, in IndexedDB: reports until the desk has them (and a while after), and the last state of the gauge. */
import type { MyGauge, MyRecord, NewReading, Problem } from '@gaugewright/contract'
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'

/** One report as it was sent off by hand: one reading, or the dry days of a stretch. Sent whole, in the order of `seq`. */
export interface KeptReport {
  seq: number
  gauge: string
  readings: NewReading[]
  madeAtUtc: string
  state: 'waiting' | 'received' | 'refused'
  receivedAtUtc: string | null
  problem: Problem | null
}

export interface KeptGauge {
  code: string
  gauge: MyGauge
  record: MyRecord | null
  keptAtUtc: string
}

interface PhoneSchema extends DBSchema {
  report: { key: number; value: Omit<KeptReport, 'seq'> & { seq?: number } }
  gauge: { key: string; value: KeptGauge }
}

const RECEIVED_KEPT_MS = 14 * 86_400_000
let opened: Promise<IDBPDatabase<PhoneSchema>> | null = null

function store(): Promise<IDBPDatabase<PhoneSchema>> {
  opened ??= openDB<PhoneSchema>('gaugewright-my', 1, {
    upgrade(database) {
      database.createObjectStore('report', { keyPath: 'seq', autoIncrement: true })
      database.createObjectStore('gauge', { keyPath: 'code' })
    },
    terminated: () => {
      opened = null
    },
  })
  return opened
}

/** Durable when it resolves: only then may the page say that the report is on the phone. */
export async function keepReport(report: Pick<KeptReport, 'gauge' | 'readings' | 'madeAtUtc'>): Promise<void> {
  const database = await store()
  const writing = database.transaction('report', 'readwrite', { durability: 'strict' })
  await writing.store.add({ ...report, state: 'waiting', receivedAtUtc: null, problem: null })
  await writing.done
}

/** Oldest first. */
export async function keptReports(): Promise<KeptReport[]> {
  return (await (await store()).getAll('report')) as KeptReport[]
}

export async function changeReport(report: KeptReport): Promise<void> {
  await (await store()).put('report', report)
}

export async function dropReport(seq: number): Promise<void> {
  await (await store()).delete('report', seq)
}

/** Reports that the desk has had for two weeks are in the record; the phone need not keep them. */
export async function dropOldReports(nowMs: number): Promise<void> {
  for (const report of await keptReports()) {
    // By the phone's own clock, as the report was made by it.
    const isOld = report.state === 'received' && Date.parse(report.madeAtUtc) < nowMs - RECEIVED_KEPT_MS
    if (isOld) await dropReport(report.seq)
  }
}

export async function keepGauge(kept: KeptGauge): Promise<void> {
  await (await store()).put('gauge', kept)
}

export async function keptGauge(code: string): Promise<KeptGauge | undefined> {
  return (await store()).get('gauge', code)
}

export async function keptGaugeCodes(): Promise<string[]> {
  return (await store()).getAllKeys('gauge')
}

/** Leaves nothing of this observer on the phone. Reports that wait are lost: the page asks first. */
export async function forgetAll(): Promise<void> {
  const database = await store()
  await Promise.all([database.clear('report'), database.clear('gauge')])
}
