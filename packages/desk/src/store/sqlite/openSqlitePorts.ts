import type { Ports } from '../../ports/ports.ts'
import { sqlAbsences } from '../sql/sqlAbsences.ts'
import { SqlAccess } from '../sql/sqlAccess.ts'
import { sqlJournal } from '../sql/sqlJournal.ts'
import { SqlLedger } from '../sql/sqlLedger.ts'
import { sqlOutbox } from '../sql/sqlOutbox.ts'
import { sqlOutgoingSettings } from '../sql/sqlOutgoingSettings.ts'
import { SqlSenders } from '../sql/sqlSenders.ts'
import { SqlUrgent } from '../sql/sqlUrgent.ts'
import { openSqliteStore } from './openSqliteStore.ts'
import { sqliteFailure } from './sqliteFailure.ts'
import { sqlitePhotos } from './sqlitePhotos.ts'

/**
 * Everything that one ledger file keeps, over one pair of connections; closing the ledger closes all.
 * @throws {LedgerError} as openSqliteStore
 */
export async function openSqlitePorts(
  path: string,
  options: { create?: boolean } = {},
): Promise<
  Pick<
    Ports,
    'ledger' | 'access' | 'absences' | 'journal' | 'outbox' | 'outgoingSettings' | 'photos' | 'urgent' | 'senders'
  >
> {
  const store = await openSqliteStore(path, options)
  const readable = (error: unknown): unknown => sqliteFailure(error, path)
  return {
    ledger: new SqlLedger(store, readable),
    access: new SqlAccess(store, readable),
    absences: sqlAbsences(store, readable),
    journal: sqlJournal(store, readable),
    outbox: sqlOutbox(store, readable),
    outgoingSettings: sqlOutgoingSettings(store, readable),
    photos: sqlitePhotos(store, path),
    urgent: new SqlUrgent(store, readable),
    senders: new SqlSenders(store, readable),
  }
}
