/** Urgent reports over SQL, for any database that Kysely speaks. */
import { formatInstant } from '@gaugewright/science'
import { sql } from 'kysely'
import { LedgerError } from '../../ports/ledgerError.ts'
import type { NewFiling, NewUrgentEvent, Urgent, UrgentEvent, UrgentSettingsSet } from '../../ports/urgent.ts'
import { instantMs } from '../instantMs.ts'
import { unknownNetwork } from '../unknown.ts'
import { UrgentListeners } from '../urgentListeners.ts'
import { filingContent, urgentEventIdTaken, urgentIdTaken, urgentUnknown } from '../urgentTrouble.ts'
import { urgentEventFromRow, urgentRow } from './urgentRows.ts'
import type { UrgentEventTable } from './urgentTables.ts'
import type { Store, WriteTransaction } from './writeTransaction.ts'

interface Filed {
  event: UrgentEvent
  already: boolean
}

interface Waiting {
  networkId: string
  networkKey: number
  filing: NewFiling
  resolve: (filed: Filed) => void
  reject: (error: unknown) => void
}

const mostTogether = 100

export class SqlUrgent implements Urgent {
  readonly #store: Store
  readonly #readable: (error: unknown) => unknown
  readonly #listeners = new UrgentListeners()
  readonly #networkKeys = new Map<string, number>()
  readonly #waiting: Waiting[] = []
  #isFiling = false

  /** @param readable turns the database's own errors into LedgerErrors */
  constructor(store: Store, readable: (error: unknown) => unknown) {
    this.#store = store
    this.#readable = readable
  }

  /** Filings that come while another is being made durable are made durable together, in one transaction. */
  async file(networkId: string, filing: NewFiling): Promise<{ event: UrgentEvent; already: boolean }> {
    const networkKey = await this.#needNetwork(networkId)
    return await new Promise((resolve, reject) => {
      this.#waiting.push({ networkId, networkKey, filing, resolve, reject })
      if (!this.#isFiling) void this.#fileWaiting()
    })
  }

  async #fileWaiting(): Promise<void> {
    this.#isFiling = true
    // Those of the same moment come along.
    await Promise.resolve()
    while (this.#waiting.length > 0) {
      const together = this.#waiting.splice(0, mostTogether)
      try {
        const outcomes = await this.#write(async (transaction) => {
          const found: (Filed | LedgerError)[] = []
          for (const { networkKey, filing } of together) found.push(await fileOne(transaction, networkKey, filing))
          return found
        })
        for (const [index, { networkId, resolve, reject }] of together.entries()) {
          const outcome = outcomes[index] as Filed | LedgerError
          if (outcome instanceof LedgerError) reject(outcome)
          else {
            if (!outcome.already) this.#listeners.tell(networkId, outcome.event)
            resolve(outcome)
          }
        }
      } catch (error) {
        for (const { reject } of together) reject(error)
      }
    }
    this.#isFiling = false
  }

  async append(networkId: string, event: NewUrgentEvent): Promise<UrgentEvent> {
    const networkKey = await this.#needNetwork(networkId)
    const added = await this.#write(async (transaction) => {
      const report = await transaction.db
        .selectFrom('urgent_event')
        .select('number')
        .where('network_key', '=', networkKey)
        .where('report_id', '=', event.reportId)
        .limit(1)
        .executeTakeFirst()
      if (report === undefined) throw urgentUnknown(event.reportId)
      if ((await eventById(transaction, networkKey, event.id)) !== null) throw urgentEventIdTaken()
      return await insert(transaction, networkKey, event)
    })
    this.#listeners.tell(networkId, added)
    return added
  }

  async eventsAfter(networkId: string, after: number, limit: number): Promise<UrgentEvent[]> {
    const query = (await this.#events(networkId))?.where('number', '>', after).limit(limit)
    return (await query?.execute())?.map(urgentEventFromRow) ?? []
  }

  async event(networkId: string, id: string): Promise<UrgentEvent | null> {
    const row = await (await this.#events(networkId))?.where('id', '=', id).executeTakeFirst()
    return row === undefined ? null : urgentEventFromRow(row)
  }

  async eventsOf(networkId: string, reportId: string): Promise<UrgentEvent[]> {
    const query = (await this.#events(networkId))?.where('report_id', '=', reportId)
    return (await query?.execute())?.map(urgentEventFromRow) ?? []
  }

  async eventsSince(networkId: string, sinceUtc: string): Promise<UrgentEvent[]> {
    const networkKey = await this.#networkKey(networkId)
    if (networkKey === null) return []
    const { rows } = await sql<UrgentEventTable>`
      with recent as (
        select distinct report_id from urgent_event
        where network_key = ${networkKey} and what = 'filed' and at_ms >= ${instantMs(sinceUtc)}
        union
        select report_id from urgent_event filed
        where network_key = ${networkKey} and what = 'filed' and not exists (
          select 1 from urgent_event act
          where act.network_key = filed.network_key and act.report_id = filed.report_id
            and act.what in ('seen', 'passed on', 'closed')
            and not exists (
              select 1 from urgent_event back where back.network_key = act.network_key and back.target = act.id
            )
        )
      )
      select event.* from recent
      join urgent_event event on event.network_key = ${networkKey} and event.report_id = recent.report_id
      order by event.number`.execute(this.#store.db)
    return rows.map(urgentEventFromRow)
  }

  async lastNumber(networkId: string): Promise<number> {
    const networkKey = await this.#networkKey(networkId)
    if (networkKey === null) return 0
    const query = this.#store.db.selectFrom('urgent_event').where('network_key', '=', networkKey)
    return (await query.select('number').orderBy('number', 'desc').limit(1).executeTakeFirst())?.number ?? 0
  }

  async settings(networkId: string): Promise<UrgentSettingsSet[]> {
    const networkKey = await this.#networkKey(networkId)
    if (networkKey === null) return []
    const query = this.#store.db.selectFrom('urgent_setting').selectAll().where('network_key', '=', networkKey)
    return (await query.orderBy('sequence').execute()).map((row) => ({
      settings: JSON.parse(row.body) as UrgentSettingsSet['settings'],
      by: row.by_name,
      atUtc: formatInstant(row.set_at_ms),
    }))
  }

  async appendSettings(networkId: string, { settings, by, atUtc }: UrgentSettingsSet): Promise<void> {
    const network_key = await this.#needNetwork(networkId)
    await this.#write(async ({ db }) => {
      const query = db.selectFrom('urgent_setting').where('network_key', '=', network_key)
      const last = await query.select((eb) => eb.fn.max('sequence').as('sequence')).executeTakeFirst()
      const sequence = Number(last?.sequence ?? 0) + 1
      const row = { network_key, sequence, set_at_ms: instantMs(atUtc), by_name: by, body: JSON.stringify(settings) }
      await db.insertInto('urgent_setting').values(row).execute()
    })
  }

  listen(listener: (networkId: string, event: UrgentEvent) => void): () => void {
    return this.#listeners.add(listener)
  }

  async forgetPerson(personId: string): Promise<number> {
    const gone = { by_name: '', by_person: null }
    const result = await this.#write(({ db }) =>
      db.updateTable('urgent_event').set(gone).where('by_person', '=', personId).executeTakeFirst(),
    )
    return Number(result.numUpdatedRows)
  }

  async byPerson(personId: string): Promise<UrgentEvent[]> {
    const query = this.#store.db.selectFrom('urgent_event').selectAll().where('by_person', '=', personId)
    return (await query.orderBy('at_ms').orderBy('number').execute()).map(urgentEventFromRow)
  }

  async #events(networkId: string) {
    const networkKey = await this.#networkKey(networkId)
    if (networkKey === null) return null
    return this.#store.db.selectFrom('urgent_event').selectAll().where('network_key', '=', networkKey).orderBy('number')
  }

  async #networkKey(networkId: string): Promise<number | null> {
    const known = this.#networkKeys.get(networkId)
    if (known !== undefined) return known
    const query = this.#store.db.selectFrom('network').select('network_key').where('id', '=', networkId)
    const found = (await query.executeTakeFirst())?.network_key ?? null
    if (found !== null) this.#networkKeys.set(networkId, found)
    return found
  }

  async #needNetwork(networkId: string): Promise<number> {
    const networkKey = await this.#networkKey(networkId)
    if (networkKey === null) throw unknownNetwork(networkId)
    return networkKey
  }

  async #write<T>(work: (transaction: WriteTransaction) => Promise<T>): Promise<T> {
    const transaction = await this.#store.begin()
    try {
      const result = await work(transaction)
      await transaction.commit()
      return result
    } catch (error) {
      await transaction.rollback()
      throw this.#readable(error)
    }
  }
}

/** Refused without harm to those that are made durable with it. */
async function fileOne(
  transaction: WriteTransaction,
  networkKey: number,
  filing: NewFiling,
): Promise<Filed | LedgerError> {
  const before = await eventById(transaction, networkKey, filing.id)
  if (before === null) return { event: await insert(transaction, networkKey, filing), already: false }
  const isSame = before.what === 'filed' && filingContent(before.report) === filingContent(filing.report)
  return isSame ? { event: before, already: true } : urgentIdTaken(filing.id)
}

async function eventById({ db }: WriteTransaction, networkKey: number, id: string): Promise<UrgentEvent | null> {
  const query = db.selectFrom('urgent_event').selectAll().where('network_key', '=', networkKey).where('id', '=', id)
  const row = await query.executeTakeFirst()
  return row === undefined ? null : urgentEventFromRow(row)
}

async function insert(
  { db }: WriteTransaction,
  networkKey: number,
  event: NewFiling | NewUrgentEvent,
): Promise<UrgentEvent> {
  const query = db.selectFrom('urgent_event').where('network_key', '=', networkKey)
  const last = await query.select('number').orderBy('number', 'desc').limit(1).executeTakeFirst()
  const row = urgentRow(event, networkKey, (last?.number ?? 0) + 1)
  await db.insertInto('urgent_event').values(row).execute()
  return urgentEventFromRow(row)
}
