/** A person is erased from a real ledger file: afterwards their name and address stand nowhere in it. */
import { readFile } from 'node:fs/promises'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { atTheCommandLine, namedBy } from '../src/app/access/doer.ts'
import { addPerson } from '../src/app/addPerson.ts'
import { decide } from '../src/app/decide.ts'
import { exportPerson } from '../src/app/exportPerson.ts'
import { forgetPerson } from '../src/app/forgetPerson.ts'
import { setRule } from '../src/app/setRule.ts'
import type { Ports } from '../src/ports/ports.ts'
import { openDatabase } from '../src/store/sqlite/openDatabase.ts'
import { openSqlitePorts } from '../src/store/sqlite/openSqlitePorts.ts'
import { fillLedger, portsOver } from './support/openDesk.ts'
import { smallNetwork } from './support/smallNetwork.ts'
import { tempFiles } from './support/tempFiles.ts'

const NAME = 'Ona Quillfeather'
const MAIL = 'ona.quillfeather@people.example'
const files = tempFiles()
const small = smallNetwork(10)
let path: string
let ports: Ports
let count = 0
beforeEach(async () => {
  path = `${files.folder}/ledger-${++count}.db`
  const { ledger, ...beside } = await openSqlitePorts(path)
  ports = portsOver(ledger, beside)
  await fillLedger(ledger, small)
})
afterEach(() => ports.ledger.close())

/** Leaves a trace of the person in every place that keeps one. */
async function livedIn(): Promise<string> {
  const gauge = small.gauges[0]
  const networkId = small.network.id
  const added = await addPerson(
    ports,
    { name: NAME, mail: MAIL, role: 'colleague', language: 'en', gauges: [gauge?.code ?? ''] },
    atTheCommandLine,
  )
  const personId = added.ok ? (added.value.people[0]?.id ?? '') : ''
  const by = namedBy({ personId, role: 'colleague', name: NAME, gauges: [] }, '')
  const readingId = small.readings.at(-1)?.id ?? ''
  await ports.ledger.saveGauges([{ ...small.gauges[0]!, observerName: NAME }])
  await decide(ports, { readingId, verdict: 'set aside', amended: null, reason: 'a test', ...by })
  await setRule(ports, { letStandAt: 0.98, why: 'a test', ...by })
  const day = { firstDay: small.readings.at(-1)?.lastDay ?? '', lastDay: small.readings.at(-1)?.lastDay ?? '' }
  const at = ports.clock.nowUtc()
  await ports.absences.announce({
    id: 'a1',
    networkId,
    gaugeId: gauge?.id ?? '',
    ...day,
    announcedBy: NAME,
    announcedAtUtc: at,
  })
  await ports.outbox.queue([
    {
      id: 'm1',
      networkId,
      key: 'test m1',
      purpose: 'question',
      content: { kind: 'mail', to: MAIL, subject: `For ${NAME}`, text: `Hello ${NAME}`, headers: {} },
      repeatable: true,
      isSecret: false,
      by: NAME,
      queuedAtUtc: at,
      notAfterUtc: null,
    },
  ])
  await ports.outgoingSettings.choose(networkId, {
    personId,
    wants: true,
    way: 'text',
    phone: '+15550100',
    by: NAME,
    chosenAtUtc: at,
  })
  return personId
}

it('gives everything that is held on a person in one answer', async () => {
  const personId = await livedIn()
  const held = await exportPerson(ports, { personId }, atTheCommandLine)
  const sections = held.ok ? held.value.sections : {}
  const sizes = Object.fromEntries(Object.entries(sections).map(([name, rows]) => [name, rows.length]))
  expect(sizes).toMatchObject({
    gauges: 1,
    readings: 10,
    decisions: 1,
    absences: 1,
    mails: 1,
    reminders: 1,
    trail: 2,
  })
  expect(JSON.stringify(held)).toContain('+15550100')
})

it('leaves no name, no address and no number in the file, and keeps readings and decisions', async () => {
  const personId = await livedIn()
  const range = await ports.ledger.dayRange(small.network.id)
  const forgotten = await forgetPerson(ports, { personId }, atTheCommandLine)
  expect(forgotten).toMatchObject({ ok: true, value: { people: [] } })
  expect(await ports.ledger.dayRange(small.network.id)).toEqual(range)
  const { lastDay } = small.readings.at(-1)!
  const [decision] = await ports.ledger.decisions(small.network.id, lastDay, lastDay)
  expect(decision).toMatchObject({ verdict: 'set aside', by: { kind: 'person', name: '' } })
  const database = openDatabase(path)
  const tables = database.prepare(`select name from sqlite_schema where type = 'table'`).all() as { name: string }[]
  const kept = tables.map(({ name }) => JSON.stringify(database.prepare(`select * from ${name}`).all()))
  database.close()
  for (const trace of [NAME, MAIL, 'Quillfeather', '+15550100']) {
    expect(kept.filter((rows) => rows.includes(trace))).toEqual([])
  }
})

it('leaves nothing of the person in the bytes of the file once it is compacted', async () => {
  const personId = await livedIn()
  await forgetPerson(ports, { personId }, atTheCommandLine)
  await ports.ledger.close()
  const database = openDatabase(path)
  database.exec('vacuum; pragma wal_checkpoint(truncate)')
  database.close()
  expect((await readFile(path)).includes('Quillfeather')).toBe(false)
  const { ledger, ...beside } = await openSqlitePorts(path)
  ports = portsOver(ledger, beside)
})
