import { copyFileSync, existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Reading } from '@gaugewright/science'
import { expect, it } from 'vitest'
import { tempFiles } from '../../../test/support/tempFiles.ts'
import { LedgerError } from '../../ports/ledgerError.ts'
import { migrate } from './migrate.ts'
import { type Migration, migrations } from './migrations.ts'
import { type Database, openDatabase } from './openDatabase.ts'
import { openSqliteLedger } from './openSqliteLedger.ts'

const files = tempFiles()
let number = 0
const freshPath = (): string => join(files.folder, `ledger-${++number}.db`)

async function madeLedger(): Promise<string> {
  const path = freshPath()
  const ledger = await openSqliteLedger(path)
  await ledger.saveNetwork({
    id: 'n',
    name: 'N',
    timeZone: 'UTC',
    readingTime: '07:00',
    acceptWindowMin: 120,
    unit: 'mm',
    language: 'en',
    docketBelow: 0.5,
  })
  await ledger.saveGauges([
    {
      id: 'g',
      networkId: 'n',
      code: 'G',
      name: 'G',
      latDeg: 1,
      lonDeg: 2,
      elevationM: null,
      area: null,
      observerName: null,
      resolutionUm: null,
      openedOn: null,
      closedOn: null,
    },
  ])
  await ledger.appendReadings('n', [
    {
      id: 'r',
      gaugeId: 'g',
      kind: 'daily',
      firstDay: '2026-03-02',
      lastDay: '2026-03-02',
      amountUm: 254,
      isTrace: false,
      startsAtUtc: '2026-03-01T07:00:00Z',
      endsAtUtc: '2026-03-02T07:00:00Z',
      text: '0.01',
      unit: 'in',
      remark: null,
      receivedAtUtc: '2026-03-02T07:05:00Z',
      door: 'desk',
      supersedes: null,
    },
  ])
  await ledger.appendDecision('n', {
    id: 'd',
    readingId: 'r',
    verdict: 'stands',
    amended: null,
    by: { kind: 'person', name: 'P' },
    reason: '',
    decidedAtUtc: '2026-03-02T08:00:00Z',
    undoes: null,
  })
  await ledger.appendRuleSetting('n', {
    id: 's',
    letStandAt: 0.98,
    by: 'P',
    why: 'a test',
    setAtUtc: '2026-03-02T08:30:00Z',
  })
  await ledger.close()
  return path
}

async function codeOf(open: Promise<unknown>): Promise<string> {
  try {
    await open
    return 'opened'
  } catch (error) {
    return error instanceof LedgerError ? error.problem.code : String(error)
  }
}

function onDatabase<T>(path: string, work: (database: Database) => T): T {
  const database = openDatabase(path)
  try {
    return work(database)
  } finally {
    database.close()
  }
}

it.each([
  'update reading set amount_um = 0',
  'delete from reading',
  "update decision set reason = 'other'",
  'delete from decision',
  'update rule_setting set let_stand_at = 0.5',
  'delete from rule_setting',
])('no program can change what was recorded: %s', async (sql) => {
  const path = await madeLedger()
  onDatabase(path, (database) => {
    database.exec('pragma foreign_keys = off')
    expect(() => database.exec(sql)).toThrow(/is never (changed|deleted)/)
    expect(database.prepare('select amount_um from reading').all()).toEqual([
      expect.objectContaining({ amount_um: 254 }),
    ])
  })
})

it('keeps what was stored when it is opened again', async () => {
  const ledger = await openSqliteLedger(await madeLedger(), { create: false })
  expect(await ledger.readings('n', '2026-03-02', '2026-03-02')).toHaveLength(1)
  expect(await ledger.decisions('n', '2026-03-02', '2026-03-02')).toHaveLength(1)
  await ledger.close()
})

it('holds everything in its one file when it is closed', async () => {
  const path = await madeLedger()
  const copy = freshPath()
  copyFileSync(path, copy) // the file alone, without a log beside it
  const ledger = await openSqliteLedger(copy, { create: false })
  expect((await ledger.reading('n', 'r'))?.reading.amountUm).toBe(254)
  await ledger.close()
})

it('forces each commit to the disk, and writes ahead', async () => {
  const path = await madeLedger()
  const ledger = await openSqliteLedger(path)
  expect(existsSync(`${path}-wal`)).toBe(true)
  await ledger.close()
  const { connectionSettings } = await import('./openDatabase.ts')
  onDatabase(path, (database) => {
    database.exec(connectionSettings)
    expect(database.prepare('pragma synchronous').get()).toMatchObject({ synchronous: 2 })
    expect(database.prepare('pragma journal_mode').get()).toMatchObject({ journal_mode: 'wal' })
    expect(database.prepare('pragma foreign_keys').get()).toMatchObject({ foreign_keys: 1 })
  })
})

it('says that there is no ledger, and makes none, where it may not', async () => {
  const path = freshPath()
  expect(await codeOf(openSqliteLedger(path, { create: false }))).toBe('LEDGER_NOT_FOUND')
  expect(existsSync(path)).toBe(false)
})

it('refuses a file that is no ledger, and leaves it as it is', async () => {
  const text = files.write('notes.db', 'These are notes, and no ledger at all. '.repeat(200))
  const other = freshPath()
  onDatabase(other, (database) => database.exec('create table mine (x)'))
  const before = [readFileSync(text), readFileSync(other)]
  expect(await codeOf(openSqliteLedger(text))).toBe('LEDGER_NOT_OURS')
  expect(await codeOf(openSqliteLedger(other))).toBe('LEDGER_NOT_OURS')
  expect([readFileSync(text), readFileSync(other)]).toEqual(before)
})

it('refuses a ledger from a newer program, and leaves it as it is', async () => {
  const path = await madeLedger()
  onDatabase(path, (database) => database.exec('pragma user_version = 9999'))
  const before = readFileSync(path)
  expect(await codeOf(openSqliteLedger(path))).toBe('LEDGER_NEWER')
  expect(readFileSync(path)).toEqual(before)
})

it('refuses a folder, or a place where it may not write', async () => {
  expect(await codeOf(openSqliteLedger(files.folder))).toBe('LEDGER_CANNOT_WRITE')
  expect(await codeOf(openSqliteLedger(join(files.folder, 'none', 'ledger.db')))).toBe('LEDGER_CANNOT_WRITE')
})

/** The same ledger as a program of that version would have written it: what the newer tables hold beyond is not in it. */
function asOfVersion(path: string, version: number): string {
  const older = freshPath()
  onDatabase(older, (database) => {
    const steps = migrations.filter((step) => step.number <= version)
    migrate(database, older, steps)
    database.exec(`pragma foreign_keys = off; attach '${path}' as newer`)
    const columnsOf = (file: 'main' | 'newer', table: string): string[] =>
      (database.prepare(`pragma ${file}.table_info(${table})`).all() as { name: string }[]).map(({ name }) => name)
    const tables = database.prepare("select name from main.sqlite_schema where type = 'table'").all()
    for (const { name } of tables as { name: string }[]) {
      const newer = new Set(columnsOf('newer', name))
      const shared = columnsOf('main', name).filter((column) => newer.has(column))
      if (shared.length === 0) continue
      database.exec(`insert or replace into main.${name} (${shared}) select ${shared} from newer.${name}`)
    }
  })
  return older
}

const next: Migration = {
  number: 1000,
  what: 'a test',
  sql: 'create table later (x integer) strict; insert into later values (7)',
}

it('brings an older ledger up to date without touching what it holds', async () => {
  const path = await madeLedger()
  onDatabase(path, (database) => {
    migrate(database, path, [...migrations, next])
    expect(database.prepare('select x from later').get()).toMatchObject({ x: 7 })
    expect(database.prepare('select id from reading').get()).toMatchObject({ id: 'r' })
    expect(database.prepare('pragma user_version').get()).toMatchObject({ user_version: 1000 })
    migrate(database, path, [...migrations, next]) // done already: nothing to do
  })
})

it('counts the current readings of a ledger that did not keep their number yet', async () => {
  const path = await madeLedger()
  const ledger = await openSqliteLedger(path)
  const [first] = await ledger.readings('n', '2026-03-02', '2026-03-02')
  await ledger.appendReadings('n', [{ ...(first as Reading), id: 'corrected', amountUm: 4_321 }])
  await ledger.close()
  const older = asOfVersion(path, 1)
  onDatabase(older, (database) => {
    migrate(database, older)
    expect(database.prepare('select readings, stored from reading_count').all()).toMatchObject([
      { readings: 1, stored: 2 },
    ])
  })
})

it('makes the one threshold that a network had the first setting of its rule', async () => {
  const path = asOfVersion(await madeLedger(), 2)
  onDatabase(path, (database) => {
    database.exec('update network set let_stand_at = 0.985')
    migrate(database, path)
  })
  const ledger = await openSqliteLedger(path)
  expect(await ledger.ruleSettings('n')).toMatchObject([{ letStandAt: 0.985, setAtUtc: '1970-01-01T00:00:00Z' }])
  expect((await ledger.networks()).map((network) => network.id)).toEqual(['n'])
  await ledger.close()
})

it('keeps decisions that were made before the mistake was kept with them, without one', async () => {
  const path = await madeLedger()
  const ledger = await openSqliteLedger(path)
  const before = await ledger.decisions('n', '2026-03-02', '2026-03-02')
  await ledger.close()
  const older = asOfVersion(path, 3)
  onDatabase(older, (database) => migrate(database, older))
  const after = await openSqliteLedger(older)
  expect(before.length).toBeGreaterThan(0)
  expect(await after.decisions('n', '2026-03-02', '2026-03-02')).toStrictEqual(before)
  await after.close()
})

it('keeps absences that were announced before it was kept who announced them, once each', async () => {
  const path = await madeLedger()
  const ledger = await openSqliteLedger(path)
  const absence = { networkId: 'n', gaugeId: 'g', firstDay: '2026-03-04', lastDay: '2026-03-09' }
  await ledger.saveAbsence(absence)
  await ledger.close()
  const older = asOfVersion(path, 5)
  const after = await openSqliteLedger(older)
  await after.saveAbsence(absence)
  expect(await after.absences('n', '2026-03-01', '2026-03-31')).toEqual([absence])
  await after.close()
})

it('leaves a ledger at its old version when a step fails half way', async () => {
  const path = await madeLedger()
  const broken: Migration = { ...next, sql: `${next.sql}; create table reading (x)` }
  onDatabase(path, (database) => {
    expect(() => migrate(database, path, [...migrations, broken])).toThrow(/reading/)
    expect(database.prepare("select count(*) as n from sqlite_schema where name = 'later'").get()).toMatchObject({
      n: 0,
    })
    expect(database.prepare('pragma user_version').get()).toMatchObject({ user_version: migrations.at(-1)?.number })
  })
})

it('has numbered steps that rise', () => {
  const numbers = migrations.map((migration) => migration.number)
  expect(numbers).toEqual([...new Set(numbers)].sort((one, other) => one - other))
})

it('tells that it is busy when another program keeps the ledger locked', async () => {
  const path = await madeLedger()
  const { sqliteFailure } = await import('./sqliteFailure.ts')
  onDatabase(path, (first) => {
    first.exec('begin immediate')
    onDatabase(path, (second) => {
      second.exec('pragma busy_timeout = 0')
      let seen: unknown
      try {
        second.exec('begin immediate')
      } catch (error) {
        seen = sqliteFailure(error, path)
      }
      expect((seen as LedgerError).problem?.code).toBe('LEDGER_BUSY')
    })
    first.exec('rollback')
  })
})

it('waits for another program that writes, and goes on with its own work meanwhile', async () => {
  const path = await madeLedger()
  const ledger = await openSqliteLedger(path)
  const other = openDatabase(path)
  other.exec('begin immediate')
  const order: string[] = []
  const waiting = ledger.saveCached('n', 'key', '1', 'body').then(() => order.push('written'))
  expect((await ledger.readings('n', '2026-03-02', '2026-03-02')).length).toBe(1)
  order.push('read')
  other.exec('commit')
  other.close()
  await waiting
  expect(order).toEqual(['read', 'written'])
  await ledger.close()
})

it('finds a day, a gauge and a reading by index, never by going through the table', async () => {
  const path = await madeLedger()
  const current = 'not exists (select 1 from reading n where n.network_key = r.network_key and n.supersedes = r.id)'
  const plans = onDatabase(path, (database) => {
    const plan = (where: string): string => {
      const rows = database.prepare(`explain query plan select * from reading r where ${where} and ${current}`).all()
      return rows.map((row) => (row as { detail: string }).detail).join('; ')
    }
    return [
      plan('network_key = 1 and last_day between 20000 and 20000'),
      plan('network_key = 1 and gauge_key = 1 and last_day between 0 and 30000'),
      plan("network_key = 1 and id = 'r'"),
    ]
  })
  expect(plans[0]).toContain('USING INDEX reading_by_day (network_key=? AND last_day>? AND last_day<?)')
  expect(plans[1]).toContain('USING PRIMARY KEY (network_key=? AND gauge_key=? AND last_day>? AND last_day<?)')
  expect(plans[2]).toContain('USING INDEX reading_by_id (network_key=? AND id=?)')
  for (const plan of plans) {
    expect(plan).toContain('reading_superseded (network_key=? AND supersedes=?)')
    expect(plan).not.toContain('SCAN')
  }
})
