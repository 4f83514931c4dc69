/** Files and mails that come into a folder: whole or not at all, once, across crashes, and from people who are known. */
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import MailComposer from 'nodemailer/lib/mail-composer/index.js'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { takeFromFolder } from '../src/app/takeFromFolder.ts'
import { fileIntake } from '../src/intake/fileIntake.ts'
import { folders } from '../src/intake/folders.ts'
import type { Ports } from '../src/ports/ports.ts'
import { openTestDesk } from './support/openDesk.ts'
import { tempFiles } from './support/tempFiles.ts'
import { type TestWorld, testWorld } from './support/testWorld.ts'

const files = tempFiles()
const ask = { unit: 'mm', localTimeZone: 'UTC' } as const
let number = 0
let folder: string
let ports: Ports

beforeEach(async () => {
  folder = join(files.folder, `in-${++number}`)
  mkdirSync(folder)
  ports = (await openTestDesk()).ports
})

const put = (name: string, content: string) => writeFileSync(join(folder, name), content)
const names = (inside: string) => readdirSync(join(folder, inside)).sort()
const report = (inside: string, name: string) => readFileSync(join(folder, inside, `${name}.report.txt`), 'utf8')
const stored = async () => (await ports.ledger.dayRange('small'))?.stored ?? 0

async function look(): Promise<string[]> {
  const answer = await takeFromFolder(ports, fileIntake, await folders.files(folder, 0), ask)
  if (!answer.ok) throw new Error(answer.problem.code)
  return answer.value.files.map(({ name, outcome }) => `${name} ${outcome}`)
}

describe('a folder of files', () => {
  it('takes CSV and SHEF, and moves each with a report beside it', async () => {
    const before = await stored()
    put('a.csv', 'gauge,day,amount\nA1,2025-03-01,4.0\nA2,2025-03-01,T\n')
    put('b.shef', '.A NOSUCH 20250302 Z DH07/SD 3\n')
    expect(await look()).toEqual(['a.csv taken', 'b.shef taken'])
    expect(await stored()).toBe(before + 2)
    expect(names('taken')).toEqual(['a.csv', 'a.csv.report.txt', 'b.shef', 'b.shef.report.txt'])
    expect(report('taken', 'a.csv')).toBe(
      'a.csv: taken.\nreadings: 2 stored, 0 of them correcting earlier ones, 0 there already\n',
    )
    expect(report('taken', 'b.shef')).toContain('1 passed over: SD: not rain')
    expect(readdirSync(folder).sort()).toEqual(['refused', 'taken'])
  })

  it('takes nothing of a file with one bad row, and says which', async () => {
    const before = await stored()
    put('bad.csv', 'gauge,day,amount\nA1,2025-03-01,4.0\nA2,2025-03-01,wet\n')
    expect(await look()).toEqual(['bad.csv refused'])
    expect(await stored()).toBe(before)
    expect(report('refused', 'bad.csv')).toMatch(/nothing of it was taken\.\nAMOUNT_UNREADABLE: bad\.csv line 3/)
  })

  it('takes the same content once, under whatever name it comes', async () => {
    const content = 'gauge,day,amount\nA1,2025-03-01,4.0\n'
    put('a.csv', content)
    await look()
    // Meanwhile the observer corrects: the old file must not bring the old amount back.
    put('corrected.csv', 'gauge,day,amount\nA1,2025-03-01,0.4\n')
    await look()
    put('a.csv', content)
    put('again.csv', content)
    expect(await look()).toEqual(['a.csv taken', 'again.csv taken'])
    expect(report('taken', 'again.csv')).toContain('came before as a.csv')
    expect(names('taken').filter((name) => name.endsWith('.csv'))).toEqual([
      'a-2.csv',
      'a.csv',
      'again.csv',
      'corrected.csv',
    ])
    const [current] = await ports.ledger.readings('small', '2025-03-01', '2025-03-01')
    expect(current?.text).toBe('0.4')
  })

  it('loses nothing and doubles nothing when it stops between the keeping and the moving', async () => {
    const before = await stored()
    put('a.csv', 'gauge,day,amount\nA1,2025-03-01,4.0\n')
    const open = await folders.files(folder, 0)
    const dying = { ...open, settle: async () => Promise.reject(new Error('the power went')) }
    await expect(takeFromFolder(ports, fileIntake, dying, ask)).rejects.toThrow('the power went')
    expect(existsSync(join(folder, 'a.csv'))).toBe(true)
    expect(await look()).toEqual(['a.csv taken'])
    expect(await stored()).toBe(before + 1)
    expect(report('taken', 'a.csv')).toContain('1 stored')
  })

  it('waits for what is still being written, and passes by what is hidden or in parts', async () => {
    const answer = async (settleMs: number) => {
      const taken = await takeFromFolder(ports, fileIntake, await folders.files(folder, settleMs), ask)
      return taken.ok ? taken.value.files.map(({ name }) => name) : []
    }
    put('.hidden.csv', 'x')
    put('a.csv.part', 'x')
    put('a.csv', 'gauge,day,amount\nA1,2025-03-01,4.0\n')
    expect(await answer(60_000)).toEqual([])
    const old = new Date(Date.now() - 61_000)
    utimesSync(join(folder, 'a.csv'), old, old)
    expect(await answer(60_000)).toEqual(['a.csv'])
    renameSync(join(folder, 'a.csv.part'), join(folder, 'b.csv'))
    expect(await answer(0)).toEqual(['b.csv'])
  })

  it('tells that a file came, by notice or by the clock', async () => {
    const open = await folders.files(folder, 0)
    let told = 0
    const stop = open.watch(() => {
      told++
    }, 200)
    await expect.poll(() => told, { timeout: 5000 }).toBeGreaterThan(0)
    await stop()
    const last = told
    await new Promise((resolve) => setTimeout(resolve, 500))
    expect(told).toBe(last)
  })
})

describe('a mailbox', () => {
  const person = (role: 'observer' | 'viewer' | 'colleague', mail: string, gauges: string[] = []) =>
    ports.access.savePerson({
      id: `p-${mail}`,
      name: mail,
      role,
      mail,
      language: 'en',
      gauges,
      addedAtUtc: '2026-05-01T00:00:00Z',
    })

  async function deliver(name: string, mail: ConstructorParameters<typeof MailComposer>[0]): Promise<void> {
    const raw = await new MailComposer({
      to: 'desk@ambrel.example',
      date: new Date(0),
      messageId: `<${name}@x>`,
      ...mail,
    })
      .compile()
      .build()
    mkdirSync(join(folder, 'new'), { recursive: true })
    writeFileSync(join(folder, 'new', name), raw)
  }

  async function lookAtMails(): Promise<string[]> {
    const answer = await takeFromFolder(ports, fileIntake, await folders.mails(folder), ask)
    if (!answer.ok) throw new Error(answer.problem.code)
    return answer.value.files.map(({ name, outcome }) => `${name} ${outcome}`)
  }

  it('takes SHEF in the text, without the signature, and tables that are attached', async () => {
    const before = await stored()
    await person('colleague', 'office@ambrel.example')
    await ports.ledger.saveGauges([
      { ...((await ports.ledger.gauges('small'))[0] as never as object), id: 'g-abcd', code: 'ABCD1' } as never,
    ])
    const text = 'Good morning,\n\n.B AMBREL 20250301 Z DH07/PP\nABCD1 0.38\n.END\n-- \nThe office\n'
    await deliver('1.shef', { from: 'Office <Office@Ambrel.example>', subject: 'morning', text })
    const csv = 'gauge,day,amount\nA1,2025-03-01,4.0\nA2,2025-03-01,5.0\n'
    await deliver('2.csv', {
      from: 'office@ambrel.example',
      text: 'See attached.',
      attachments: [{ filename: 'märz 1.csv', content: csv }],
    })
    expect(await lookAtMails()).toEqual(['1.shef taken', '2.csv taken'])
    expect(await stored()).toBe(before + 3)
    const kept = await ports.ledger.readings('small', '2025-03-01', '2025-03-01')
    expect(kept.find(({ gaugeId }) => gaugeId === 'g-abcd')).toMatchObject({ amountUm: 9652, text: '0.38', unit: 'in' })
    expect(names('new')).toEqual([])
    expect(names('taken')).toContain('2.csv.report.txt')
  })

  it('takes of an observer what is of their own gauges, and nothing from strangers, viewers or about others', async () => {
    const before = await stored()
    await person('observer', 'ana@ambrel.example', ['gA1'])
    await person('viewer', 'press@ambrel.example')
    const table = (gauge: string) => `gauge,day,amount\n${gauge},2025-03-01,4.0\n`
    await deliver('1', { from: 'ana@ambrel.example', text: table('A1') })
    await deliver('2', { from: 'ana@ambrel.example', text: table('A2') })
    await deliver('3', { from: 'press@ambrel.example', text: table('A3') })
    await deliver('4', { from: 'nobody@elsewhere.example', text: table('A4') })
    await deliver('5', { from: ['ana@ambrel.example', 'nobody@elsewhere.example'], text: table('A5') })
    await deliver('6', { from: 'ana@ambrel.example', text: 'It rained a lot.' })
    await deliver('7', {
      from: 'ana@ambrel.example',
      text: 'x',
      attachments: [{ filename: 'g.csv', content: 'gauge,lat,lon,elev_m\nA1,1,1,1\n' }],
    })
    expect(await lookAtMails()).toEqual(['1 taken', ...['2', '3', '4', '5', '6', '7'].map((name) => `${name} refused`)])
    const codes = ['2', '3', '4', '5', '6', '7'].map((name) => /^[A-Z_]{5,}/m.exec(report('refused', name))?.[0])
    expect(codes).toEqual([
      'GAUGE_UNKNOWN',
      'ROLE_TOO_LOW',
      'SENDER_UNKNOWN',
      'SENDER_UNKNOWN',
      'NO_READINGS',
      'FILE_KIND_UNCLEAR',
    ])
    expect(await stored()).toBe(before + 1)
  })

  it('takes the same attachment once, however often it is mailed', async () => {
    const before = await stored()
    await person('colleague', 'office@ambrel.example')
    const attachments = [{ filename: 'a.csv', content: 'gauge,day,amount\nA1,2025-03-01,4.0\n' }]
    await deliver('1', { from: 'office@ambrel.example', text: 'one', attachments })
    await deliver('2', { from: 'office@ambrel.example', text: 'once more', attachments })
    expect(await lookAtMails()).toEqual(['1 taken', '2 taken'])
    expect(report('taken', '2')).toContain('came before as 1')
    expect(await stored()).toBe(before + 1)
  })

  it('takes a mail with a good and a bad table whole or not at all', async () => {
    const before = await stored()
    await person('colleague', 'office@ambrel.example')
    const attachments = [
      { filename: 'good.csv', content: 'gauge,day,amount\nA1,2025-03-01,4.0\n' },
      { filename: 'bad.csv', content: 'gauge,day,amount\nA1,2025-13-01,4.0\n' },
    ]
    await deliver('1', { from: 'office@ambrel.example', text: 'two', attachments })
    expect(await lookAtMails()).toEqual(['1 refused'])
    expect(await stored()).toBe(before)
  })
})

describe('gaugewright watch', () => {
  let world: TestWorld

  beforeAll(async () => {
    world = await testWorld()
  })
  afterAll(() => world.remove())

  it('takes what waits and what comes while it runs, until it is stopped', async () => {
    const db = world.path('ledger.db')
    const gauges = files.write('g.csv', 'gauge,lat,lon,elev_m\nA1,40,-95,100\n')
    expect((await world.gaugewright('import', gauges, '--db', db, '--time-zone', 'UTC')).code).toBe(0)
    const options = ['--db', db, '--files', folder, '--unit', 'mm', '--settle', '0']
    put('a.csv', 'gauge,day,amount\nA1,2025-03-01,4.0\n')
    const once = await world.gaugewright('watch', '--once', ...options)
    expect([once.code, once.out]).toEqual([0, expect.stringContaining('a.csv: taken.')])
    const { stop } = await world.start('watch', '--every', '1', ...options)
    put('b.csv', 'gauge,day,amount\nA1,2025-03-02,5.0\n')
    await expect.poll(() => names('taken'), { timeout: 10_000 }).toContain('b.csv')
    const end = await stop()
    expect(end.code, end.err).toBe(0)
    expect((await world.gaugewright('watch', '--db', db)).err).toContain('FOLDER_MISSING')
    expect((await world.gaugewright('watch', '--db', db, '--files', join(db, 'inside'))).err).toContain(
      'FOLDER_UNREADABLE',
    )
  })
})
