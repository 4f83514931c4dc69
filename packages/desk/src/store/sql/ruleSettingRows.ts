/** Settings of a network's rule in SQL: each a row after the last, read oldest first. */
import { formatInstant } from '@gaugewright/science'
import type { Kysely } from 'kysely'
import type { RuleSetting } from '../../ports/ledger.ts'
import { checkRuleSetting } from '../checkRuleSetting.ts'
import { instantMs } from '../instantMs.ts'
import type { Tables } from './tables.ts'

/** @throws {LedgerError} RULE_NOT_VALID, before anything is written */
export async function insertRuleSetting(db: Kysely<Tables>, networkKey: number, setting: RuleSetting): Promise<void> {
  checkRuleSetting(setting)
  const last = await db
    .selectFrom('rule_setting')
    .select((eb) => eb.fn.max('sequence').as('sequence'))
    .where('network_key', '=', networkKey)
    .executeTakeFirst()
  await db
    .insertInto('rule_setting')
    .values({
      network_key: networkKey,
      sequence: Number(last?.sequence ?? 0) + 1,
      id: setting.id,
      let_stand_at: setting.letStandAt,
      by_name: setting.by,
      by_person: setting.byPersonId ?? null,
      why: setting.why,
      set_at_ms: instantMs(setting.setAtUtc),
    })
    .execute()
}

export async function ruleSettingsOf(db: Kysely<Tables>, networkKey: number): Promise<RuleSetting[]> {
  const query = db.selectFrom('rule_setting').selectAll().where('network_key', '=', networkKey)
  return (await query.orderBy('sequence').execute()).map((row) => ({
    id: row.id,
    letStandAt: row.let_stand_at,
    by: row.by_name,
    ...(row.by_person !== null && { byPersonId: row.by_person }),
    why: row.why,
    setAtUtc: formatInstant(row.set_at_ms),
  }))
}
