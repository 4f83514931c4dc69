/** One morning through the command line, on a ledger file in a folder of its own. */
import { existsSync } from 'node:fs'
import { readFile, stat, writeFile } from 'node:fs/promises'
import { type DayReview, dayReviewSchema, exportedDaySchema } from '@gaugewright/contract'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { migrations } from '../src/store/sqlite/migrations.ts'
import { openSqliteLedger } from '../src/store/sqlite/openSqliteLedger.ts'
import { fillLedger } from './support/openDesk.ts'
import { type SmallNetwork, smallNetwork } from './support/smallNetwork.ts'
import { type TestWorld, testWorld } from './support/testWorld.ts'

let world: TestWorld
let small: SmallNetwork
let db: string

beforeAll(async () => {
  world = await testWorld()
  small = smallNetwork(150)
  db = world.path('small.db')
  const ledger = await openSqliteLedger(db)
  await fillLedger(ledger, small)
  await ledger.close()
})
afterAll(() => world.remove())

async function day(...words: string[]): Promise<DayReview> {
  const { code, out, err } = await world.gaugewright('day', ...words, '--db', db, '--json')
  expect([code, err]).toEqual([0, ''])
  return dayReviewSchema.parse(JSON.parse(out))
}

describe('gaugewright day', () => {
  it('prints the facts, the docket with what was typed and proposed, and who has not read', async () => {
    const { code, out } = await world.gaugewright('day', '--db', db)
    expect(code).toBe(0)
    expect(out).toContain('Small Hills, observing day 2026-05-31')
    expect(out).toContain('35 of 36 read')
    expect(out).toContain('decimal')
    expect(out).toMatch(/silent: F6 Hill F6/)
    expect(out).not.toContain('\u001b[')
  })

  it('gives machines the same day in the shape of the contract', async () => {
    const review = await day()
    expect(review.docket.map(({ gaugeId }) => gaugeId).sort()).toEqual(
      expect.arrayContaining(small.slips.map(({ gaugeId }) => gaugeId).sort()),
    )
  })
})

describe('deciding', () => {
  it('explain words the slip and drafts the letter; decide takes the proposal; undo takes it back', async () => {
    const explained = await world.gaugewright('explain', 'latest', 'C3', '--db', db)
    expect(explained.out).toContain('the decimal point slipped')
    const letter = await world.gaugewright('explain', 'latest', 'c3', '--letter', '--db', db)
    expect(letter.out).toMatch(/^Dear Observer C3,/)
    const decided = await world.gaugewright('decide', 'latest', 'C3', 'amended', '--reason', 'by telephone', '--db', db)
    expect(decided.out).toMatch(/^C3 Hill C3, 2026-05-31: amended \(decision (\S+)\)/)
    const id = /decision (\S+)\)/.exec(decided.out)?.[1] ?? ''
    const slip = small.slips.find(({ kind }) => kind === 'decimal')
    const row = (await day()).roll.find(({ code }) => code === 'C3')
    expect(row?.acceptedUm).toBe(Math.round((slip?.trueMm ?? 0) * 1000))
    expect((await world.gaugewright('undo', id, '--db', db)).code).toBe(0)
    expect((await day()).roll.find(({ code }) => code === 'C3')?.decision).toBeNull()
  })

  it('takes an amount in the unit it was typed in', async () => {
    await world.gaugewright('decide', 'latest', 'A2', 'amended', '--amount', '12.3', '--db', db)
    const row = (await day()).roll.find(({ code }) => code === 'A2')
    expect(row?.acceptedUm).toBe(12_300)
    await world.gaugewright('undo', row?.decision?.id ?? '', '--db', db)
  })
})

describe('files that come out', () => {
  it('the accepted record goes out as CSV and can be screened again as it is', async () => {
    const out = world.path('accepted.csv.gz')
    const exported = await world.gaugewright('export', 'accepted', '--db', db, '--out', out)
    expect([exported.code, exported.out]).toEqual([0, ''])
    const gauges = world.path('gauges.csv')
    const lines = small.gauges.map((gauge) => `${gauge.code},${gauge.latDeg},${gauge.lonDeg},${gauge.elevationM}`)
    await writeFile(gauges, `gauge,lat,lon,elev_m\n${lines.join('\n')}\n`)
    const found = world.path('found.csv')
    const checked = await world.gaugewright(
      ...['check', gauges, out, '--unit', 'mm', '--from', '2026-05-31', '--out', found],
    )
    expect([checked.code, checked.err]).toEqual([0, ''])
    const rows = (await readFile(found, 'utf8')).trim().split('\n')
    expect(rows[0]).toBe(
      'gauge,day,reported_mm,p_stands,mistake,p_mistake,proposed_mm,proposed_first_day,proposed_last_day,p_dry,p10_mm,p50_mm,p90_mm,neighbours',
    )
    expect(rows).toHaveLength(36)
    const slip = rows.find((row) => row.startsWith('C3,'))?.split(',') ?? []
    expect(slip[4]).toBe('decimal')
    expect(Number(slip[3])).toBeLessThan(0.5)
  })

  it('expect gives quantiles for every gauge, and at points', async () => {
    const gauges = world.path('gauges.csv')
    const readings = world.path('accepted.csv.gz')
    const points = world.path('points.csv')
    await writeFile(points, 'point,lat,lon,elev_m\nmid,44.15,7.25,\nedge,44.02,7.05,400\n')
    const asked = [gauges, readings, '--unit', 'mm', '--from', '2026-05-30', '--quantiles', '4']
    const left = await world.gaugewright('expect', ...asked, '--leave-one-out')
    expect(left.err).toBe('')
    const rows = left.out.trim().split('\n')
    expect(rows[0]).toBe('gauge,day,p_dry,mean_mm,q1,q2,q3,q4')
    expect(rows).toHaveLength(1 + 2 * 36)
    const at = await world.gaugewright('expect', ...asked, '--at', points)
    const pointRows = at.out.trim().split('\n')
    expect(pointRows[0]).toBe('point,day,p_dry,mean_mm,q1,q2,q3,q4')
    expect(pointRows.slice(1).map((row) => row.split(',').slice(0, 2))).toEqual([
      ['mid', '2026-05-30'],
      ['edge', '2026-05-30'],
      ['mid', '2026-05-31'],
      ['edge', '2026-05-31'],
    ])
  })

  it('a day goes out as GeoJSON', async () => {
    const { out } = await world.gaugewright('export', 'day', '2026-05-30', '--db', db)
    const exported = exportedDaySchema.parse(JSON.parse(out))
    expect(exported.features[0]?.properties.day).toBe('2026-05-30')
    const exact = await world.gaugewright('export', 'day', '--exact-positions', '--db', db)
    expect(exact.out).toContain(String(small.gauges[0]?.lonDeg))
  })
})

describe('safety', () => {
  it('a backup is whole, is never written over, and restores what was there', async () => {
    const copy = world.path('copy.db')
    expect((await world.gaugewright('backup', copy, '--db', db)).code).toBe(0)
    const again = await world.gaugewright('backup', copy, '--db', db)
    expect(again.code).toBe(1)
    expect(again.err).toMatch(/^LEDGER_EXISTS {2}/)
    await world.gaugewright('decide', 'latest', 'B1', 'set-aside', '--db', db)
    const refused = await world.gaugewright('restore', copy, '--db', db)
    expect([refused.code, refused.err.split(' ')[0]]).toEqual([1, 'LEDGER_EXISTS'])
    const restored = await world.gaugewright('restore', copy, '--db', db, '--replace', '--json')
    expect(restored.err).toBe('')
    const { keptAs } = JSON.parse(restored.out)
    expect(existsSync(keptAs)).toBe(true)
    expect((await day()).roll.find(({ code }) => code === 'B1')?.decision).toBeNull()
    const kept = await world.gaugewright('day', '--json', '--db', keptAs)
    const was = JSON.parse(kept.out) as DayReview
    expect(was.roll.find(({ code }) => code === 'B1')?.decision?.verdict).toBe('set aside')
  })

  it('doctor counts what the ledger holds, and calls a damaged file damaged', async () => {
    const { out } = await world.gaugewright('doctor', '--db', db, '--json')
    const found = JSON.parse(out)
    expect(found).toMatchObject({ integrity: 'ok', schemaVersion: migrations.length })
    expect(found.counts).toContainEqual({ name: 'reading', rows: small.readings.length })
    const copy = world.path('damaged.db')
    await world.gaugewright('backup', copy, '--db', db)
    const bytes = await readFile(copy)
    for (let at = 40_000; at < 60_000; at++) bytes[at] = at % 251
    await writeFile(copy, bytes)
    const sick = await world.gaugewright('doctor', '--db', copy)
    expect(sick.code).toBe(1)
    expect(sick.err).toMatch(/^LEDGER_DAMAGED {2}/)
    const target = world.path('target.db')
    expect((await world.gaugewright('restore', copy, '--db', target)).code).toBe(1)
    expect(existsSync(target)).toBe(false)
  })
})

describe('serve', () => {
  it('opens the desk on loopback and closes it when asked, leaving no lock behind', async () => {
    const { line, stop } = await world.start('serve', '--db', db, '--port', '0', '--no-open')
    const url = /http:\/\/127\.0\.0\.1:\d+/.exec(line)?.[0] ?? ''
    const review = dayReviewSchema.parse(await (await fetch(`${url}/api/days/latest`)).json())
    expect(review.day).toBe('2026-05-31')
    const busy = await world.gaugewright('serve', '--db', db, '--port', new URL(url).port)
    expect([busy.code, busy.err.split(' ')[0]]).toEqual([1, 'PORT_TAKEN'])
    const whileOpen = await world.gaugewright('restore', world.path('copy.db'), '--db', db, '--replace')
    expect([whileOpen.code, whileOpen.err.split(' ')[0]]).toEqual([1, 'LEDGER_BUSY'])
    expect((await stop()).code).toBe(0)
    await expect(fetch(url)).rejects.toThrow()
  })
})

describe('what cannot be done', () => {
  it.each([
    [['day', '--db', 'nowhere.db'], 1, 'LEDGER_NOT_FOUND'],
    [['day', '2026-13-01'], 1, 'DAY_UNREADABLE'],
    [['day', '1990-01-01'], 1, 'DAY_OUTSIDE_RECORD'],
    [['explain', 'latest', 'ZZ9'], 1, 'GAUGE_NOT_ON_ROLL'],
    [['explain', 'latest', 'F6'], 1, 'GAUGE_NOT_READ'],
    [['decide', 'latest', 'A1', 'perhaps'], 2, 'VERDICT_UNKNOWN'],
    [['decide', 'latest', 'A1', 'amended', '--amount', 'much'], 2, 'AMENDED_AMOUNT_UNREADABLE'],
    [['undo', 'nothing'], 1, 'DECISION_UNKNOWN'],
    [['export', 'accepted', '--from', '2026-05-02', '--to', '2026-05-01'], 1, 'DAYS_OUT_OF_ORDER'],
    [['check', 'no.csv', 'none.csv', '--unit', 'mm'], 1, 'FILE_NOT_FOUND'],
  ] as const)('%j ends with %i and one line that begins with %s', async (words, code, problem) => {
    const needsLedger = !words.includes('--db' as never) && words[0] !== 'check'
    const before = (await stat(db)).size
    const ran = await world.gaugewright(...words, ...(needsLedger ? ['--db', db] : []))
    expect([ran.code, ran.err.split(' ')[0]]).toEqual([code, problem])
    expect(ran.err.trim().split('\n')).toHaveLength(1)
    expect((await stat(db)).size).toBe(before)
  })

  it.each([
    [['day', '--nonsense']],
    [['conquer']],
    [['check', 'gauges.csv']],
    [['check', 'gauges.csv', 'readings.csv']],
    [['check', 'gauges.csv', 'readings.csv', '--unit', 'cubits']],
    [['check', 'gauges.csv', 'readings.csv', '--unit', 'mm', '--from', '2026-02-30']],
    [['expect', 'g.csv', 'r.csv', '--unit', 'mm', '--leave-one-out', '--at', 'p.csv']],
    [['expect', 'g.csv', 'r.csv', '--unit', 'mm', '--quantiles', '0']],
    [['serve', '--port', '99999']],
  ])('%j is bad usage: exit 2, and it says how', async (words) => {
    const ran = await world.gaugewright(...words)
    expect(ran.code).toBe(2)
    expect(ran.err).toMatch(/error: .+/)
  })

  it('help and version are no failures', async () => {
    expect((await world.gaugewright('--version')).out).toBe('0.0.0-test\n')
    const help = await world.gaugewright('--help')
    expect(help.code).toBe(0)
    for (const command of [
      'serve',
      'demo',
      'import',
      'day',
      'check',
      'expect',
      'export',
      'backup',
      'restore',
      'doctor',
    ])
      expect(help.out).toContain(`  ${command} `)
  })
})
