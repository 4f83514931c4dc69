/** Announced absences over SQL, for any database that Kysely speaks. */
import { type IsoDay, isoFromEpochDay } from '@gaugewright/science'
import type { Absences, AnnouncedAbsence } from '../../ports/absence.ts'
import { checkAbsence } from '../checkAbsence.ts'
import { instantMs } from '../instantMs.ts'
import { evenInstant } from '../outbox/evenInstant.ts'
import { unknownGauge, unknownNetwork } from '../unknown.ts'
import { insertAbsence } from './absenceRows.ts'
import { GaugeIds } from './gaugeIds.ts'
import type { AbsenceTable } from './outgoingTables.ts'
import { epochDay } from './rowShapes.ts'
import type { Store, WriteTransaction } from './writeTransaction.ts'

/** @param readable turns the database's own errors into LedgerErrors */
export function sqlAbsences(store: Store, readable: (error: unknown) => unknown): Absences {
  const ids = new GaugeIds(store.db)
  const write = async <T>(work: (transaction: WriteTransaction) => Promise<T>): Promise<T> => {
    const transaction = await store.begin()
    try {
      const result = await work(transaction)
      await transaction.commit()
      return result
    } catch (error) {
      await transaction.rollback()
      throw readable(error)
    }
  }
  const found = async (networkKey: number, networkId: string, rows: readonly AbsenceTable[]) => {
    const idOf = await ids.idsOf(
      networkKey,
      rows.map((row) => row.gauge_key),
    )
    return rows.map((row) => absenceFromRow(row, networkId, idOf.get(row.gauge_key) ?? ''))
  }
  return {
    async announce(absence) {
      checkAbsence(absence)
      return await write(async ({ db }) => {
        const networkKey = await ids.networkKey(absence.networkId)
        if (networkKey === null) throw unknownNetwork(absence.networkId)
        const gaugeKey = await ids.gaugeKey(networkKey, absence.gaugeId)
        if (gaugeKey === null) throw unknownGauge(absence.gaugeId, absence.networkId)
        return await insertAbsence(db, networkKey, gaugeKey, absence)
      })
    },
    async withdraw(networkId, id, by, atUtc) {
      return await write(async ({ db }) => {
        const networkKey = await ids.networkKey(networkId)
        const result = await db
          .updateTable('absence')
          .set({ withdrawn_by: by, withdrawn_at_ms: instantMs(atUtc) })
          .where('network_key', '=', networkKey ?? -1)
          .where('id', '=', id)
          .where('withdrawn_by', 'is', null)
          .executeTakeFirst()
        return Number(result.numUpdatedRows) > 0
      })
    },
    async ofDays(networkId: string, fromDay: IsoDay, toDay: IsoDay) {
      const networkKey = await ids.networkKey(networkId)
      if (networkKey === null) return []
      const rows = await store.db
        .selectFrom('absence')
        .selectAll()
        .where('network_key', '=', networkKey)
        .where('first_day', '<=', epochDay(toDay))
        .where('last_day', '>=', epochDay(fromDay))
        .where('withdrawn_by', 'is', null)
        .execute()
      const absences = await found(networkKey, networkId, rows)
      const order = ({ firstDay, gaugeId }: AnnouncedAbsence): string => `${firstDay} ${gaugeId}`
      return absences.sort((one, other) => (order(one) < order(other) ? -1 : 1))
    },
    async ofGauge(networkId, gaugeId) {
      const networkKey = await ids.networkKey(networkId)
      const gaugeKey = networkKey === null ? null : await ids.gaugeKey(networkKey, gaugeId)
      if (networkKey === null || gaugeKey === null) return []
      const query = store.db.selectFrom('absence').selectAll().where('network_key', '=', networkKey)
      const rows = await query.where('gauge_key', '=', gaugeKey).orderBy('sequence').execute()
      return await found(networkKey, networkId, rows)
    },
  }
}

function absenceFromRow(row: AbsenceTable, networkId: string, gaugeId: string): AnnouncedAbsence {
  return {
    id: row.id,
    networkId,
    gaugeId,
    firstDay: isoFromEpochDay(row.first_day),
    lastDay: isoFromEpochDay(row.last_day),
    announcedBy: row.announced_by,
    announcedAtUtc: evenInstant(row.announced_at_ms),
    withdrawnBy: row.withdrawn_by,
    withdrawnAtUtc: row.withdrawn_at_ms === null ? null : evenInstant(row.withdrawn_at_ms),
  }
}
