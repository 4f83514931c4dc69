/** Promises of transactions that share a commit, on a real file that a second connection looks at. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { connectionSettings, type Database, openDatabase } from './openDatabase.ts'
import { SharedCommit } from './sharedCommit.ts'

let folder: string
let writer: Database
let reader: Database
let shared: SharedCommit

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'shared-commit-'))
  writer = openDatabase(join(folder, 'a.db'))
  writer.exec(connectionSettings)
  writer.exec('create table seen (what text primary key) strict')
  reader = openDatabase(join(folder, 'a.db'))
  shared = new SharedCommit(writer)
})
afterEach(() => {
  reader.close()
  writer.close()
  rmSync(folder, { recursive: true, force: true })
})

const kept = (): unknown[] => reader.prepare('select what from seen order by what').all()
const rows = (...what: string[]) => what.map((one) => ({ what: one }))

function member(what: string, how: 'keep' | 'drop' = 'keep'): Promise<void> {
  if (!shared.hasRoom) writer.exec('begin immediate')
  shared.enter()
  writer.exec(`insert into seen values ('${what}')`)
  return shared.leave(how)
}

describe('transactions that share a commit', () => {
  it('tells none of them before all can be seen by others', async () => {
    const first = member('first').then(() => kept())
    const second = member('second')
    expect(kept()).toEqual([])
    expect(await first).toEqual(rows('first', 'second'))
    await second
  })

  it('drops one that fails, keeps those beside it, and lets it end only when they are durable', async () => {
    const before = member('before')
    const dropped = member('dropped', 'drop').then(() => kept())
    const after = member('after')
    expect(await dropped).toEqual(rows('after', 'before'))
    await Promise.all([before, after])
  })

  it('fails all of them where the commit fails, and works on afterwards', async () => {
    const both = [member('one'), member('two')]
    writer.exec('rollback') // as SQLite itself does when the disk is full
    const outcomes = await Promise.allSettled(both)
    expect(outcomes.map(({ status }) => status)).toEqual(['rejected', 'rejected'])
    await member('three')
    expect(kept()).toEqual(rows('three'))
  })

  it('does not commit under one that is still at work', async () => {
    const first = member('first')
    shared.enter()
    writer.exec("insert into seen values ('slow')")
    await new Promise((resume) => setTimeout(resume, 20))
    expect(kept()).toEqual([])
    await shared.leave('keep')
    await first
    expect(kept()).toEqual(rows('first', 'slow'))
  })
})
