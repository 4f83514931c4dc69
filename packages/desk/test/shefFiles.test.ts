/** SHEF through files: the whole demo morning out and in again, the command line, and refused lines by their place. */
import { readFileSync } from 'node:fs'
import { makeScenario, readingAt } from '@gaugewright/scenario'
import { decodeShef, type Reading, shefAmount } from '@gaugewright/science'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { exportShef } from '../src/app/exportShef.ts'
import { importFiles } from '../src/app/importFiles.ts'
import { fileIntake } from '../src/intake/fileIntake.ts'
import type { Gauge } from '../src/ports/ledger.ts'
import { openMemoryLedger } from '../src/store/memory/memoryLedger.ts'
import { openSqliteLedger } from '../src/store/sqlite/openSqliteLedger.ts'
import { portsOver } from './support/openDesk.ts'
import { tempFiles } from './support/tempFiles.ts'
import { type TestWorld, testWorld } from './support/testWorld.ts'

const files = tempFiles()
const today = '2026-07-16'

/** The demo's gauges and its last morning, as the demo makes them. */
function demoMorning() {
  const scenario = makeScenario({ seed: 1, today, years: 1 })
  const network = { ...scenario.network, id: 'demo' }
  const gauges: Gauge[] = scenario.gauges.map((gauge, index) => ({ ...gauge, id: `gauge-${index}`, networkId: 'demo' }))
  const readings: Reading[] = []
  for (let index = 0; index < scenario.readings.count; index++) {
    const { gauge, ...reading } = readingAt(scenario.readings, index)
    if (reading.lastDay !== today) continue
    readings.push({ ...reading, id: `reading-${index}`, gaugeId: `gauge-${gauge}`, door: 'demo', supersedes: null })
  }
  return { network, gauges, readings }
}

async function ledgerWith(morning: ReturnType<typeof demoMorning>, withReadings: boolean) {
  const ledger = openMemoryLedger()
  await ledger.saveNetwork(morning.network)
  await ledger.saveGauges(morning.gauges)
  if (withReadings) await ledger.appendReadings('demo', morning.readings)
  return portsOver(ledger, { clock: { nowUtc: () => '2026-07-16T18:00:00Z' } })
}

const importAsk = { network: {}, localTimeZone: 'UTC', flagged: 'keep', wereInches: false } as const

describe('the whole demo morning', () => {
  it.each(['in', 'mm'] as const)(
    'goes out as SHEF in %s and comes in again as the same readings',
    async (unit) => {
      const morning = demoMorning()
      expect(morning.readings.length).toBeGreaterThan(150)
      expect(morning.readings.some(({ kind }) => kind === 'multiday')).toBe(true)
      expect(morning.readings.some(({ isTrace }) => isTrace)).toBe(true)
      const from = await ledgerWith(morning, true)
      const exported = await exportShef(from, { day: today, source: 'AMBREL', unit })
      if (!exported.ok) throw new Error(JSON.stringify(exported.problem))
      expect(exported.value.text).toMatch(/^\.B AMBREL 20260716 Z DH/)
      expect(decodeShef(exported.value.text, { nowUtcMs: Date.UTC(2026, 6, 16) }).problems).toEqual([])
      const to = await ledgerWith(morning, false)
      const path = files.write(`morning-${unit}.shef`, exported.value.text)
      const imported = await importFiles(to, fileIntake, { ...importAsk, paths: [path] })
      if (!imported.ok) throw new Error(JSON.stringify(imported.problem))
      expect(imported.value.files[0]).toMatchObject({
        kind: 'shef',
        readings: { stored: morning.readings.length },
        passedOver: {},
      })
      const said = (readings: readonly Reading[]) =>
        readings.map(({ gaugeId, kind, firstDay, lastDay, amountUm, isTrace, endsAtUtc }) => ({
          gaugeId,
          kind,
          firstDay,
          lastDay,
          amountUm,
          isTrace,
          endsAtUtc: Math.floor(Date.parse(endsAtUtc) / 1000),
        }))
      const [before, after] = await Promise.all([from, to].map(({ ledger }) => ledger.readings('demo', today, today)))
      expect(said(after ?? [])).toEqual(said(before ?? []))
    },
    120_000,
  )
})

describe('gaugewright import and export', () => {
  let world: TestWorld
  let db: string

  beforeAll(async () => {
    world = await testWorld()
    db = world.path('ledger.db')
    const gauges = files.write('gauges.csv', 'gauge,lat,lon,elev_m\nEGTM7,40,-95,100\nWGLM8,40.1,-95.2,\n')
    const made = await world.gaugewright('import', gauges, '--db', db, '--time-zone', 'America/Chicago')
    expect(made.code, made.err).toBe(0)
  })
  afterAll(() => world.remove())

  const readings = async () => {
    const ledger = await openSqliteLedger(db)
    const network = (await ledger.networks())[0]
    const found = await ledger.readings(network?.id ?? '', '2000-01-01', '2100-01-01')
    await ledger.close()
    return found
  }

  it('take SHEF by its look, with the times at which gauges were read', async () => {
    const text = '.A EGTM7 20260320 C DH08/HG 5.75/QR 5.97/PP 2.15\n.E WGLM8 20260321 C DH07/PP/DID1/1.20/+/T\n'
    const done = await world.gaugewright('import', files.write('morning.txt', text), '--db', db)
    expect(done.code, done.err).toBe(0)
    expect(done.out).toContain('3 readings stored')
    expect(done.out).toContain('1 passed over: said to be missing')
    expect(
      (await readings()).map(({ lastDay, amountUm, isTrace, text: typed, endsAtUtc, door }) => [
        lastDay,
        amountUm,
        isTrace,
        typed,
        endsAtUtc,
        door,
      ]),
    ).toEqual([
      ['2026-03-20', 54_610, false, '2.15', '2026-03-20T13:00:00Z', 'import'],
      ['2026-03-21', 30_480, false, '1.20', '2026-03-21T12:00:00Z', 'import'],
      ['2026-03-23', 0, true, 'T', '2026-03-23T12:00:00Z', 'import'],
    ])
  })

  it('take nothing where a line is refused, and say where; the good ones and a file of the others when asked', async () => {
    const before = (await readings()).length
    const path = files.write(
      'bad.shef',
      '.A EGTM7 20260401 C DH07/PP 0.10\n.A EGTM7 20260402 C DH07/PP O.20\n.A NOBODY 20260402 C DH07/PP 0.30\n',
    )
    const whole = await world.gaugewright('import', path, '--db', db)
    expect([whole.code, whole.err]).toEqual([
      1,
      expect.stringMatching(/^SHEF_VALUE {2}bad\.shef line 2, column 29: found "O\.20"/),
    ])
    expect(await readings()).toHaveLength(before)
    const refusedFile = world.path('bad.refused.shef')
    const good = await world.gaugewright('import', path, '--db', db, '--keep-good', '--refused-file', refusedFile)
    expect(good.code, good.err).toBe(0)
    expect(await readings()).toHaveLength(before + 1)
    const refused = readFileSync(refusedFile, 'utf8').trimEnd().split('\n')
    expect(refused.map((line) => line.split(' :')[0])).toEqual([
      '.A EGTM7 20260402 C DH07/PP O.20',
      '.A NOBODY 20260402 C DH07/PP 0.30',
    ])
    expect(refused[1]).toContain('NOBODY')
  })

  it('give a day as SHEF that reads back', async () => {
    const done = await world.gaugewright(
      'export',
      'shef',
      '2026-03-20',
      '--source',
      'AMBREL',
      '--unit',
      'in',
      '--db',
      db,
    )
    expect(done.code, done.err).toBe(0)
    const { values, problems } = decodeShef(done.out, { nowUtcMs: Date.UTC(2026, 3, 1) })
    expect(problems).toEqual([])
    expect(values.map((value) => [value.location, shefAmount(value)])).toEqual([
      ['EGTM7', { amountUm: 54_610, isTrace: false }],
    ])
    const refused = await world.gaugewright('export', 'shef', '2026-03-20', '--source', 'no such', '--db', db)
    expect([refused.code, refused.err]).toEqual([1, expect.stringContaining('SHEF_CANNOT_SAY')])
  })

  it('make, list and revoke keys; a key is shown once', async () => {
    const made = await world.gaugewright('key', 'add', 'station network', '--scopes', 'send,read', '--db', db)
    expect(made.code, made.err).toBe(0)
    expect(made.out).toMatch(/^gauge_[A-Za-z0-9_-]{43}\n$/)
    const listed = await world.gaugewright('key', 'list', '--json', '--db', db)
    expect(listed.out).not.toContain(made.out.trim())
    const [key] = JSON.parse(listed.out).keys
    expect(key).toMatchObject({ sender: 'station network', scopes: ['send', 'read'], revokedAtUtc: null })
    expect((await world.gaugewright('key', 'revoke', key.id, '--db', db)).out).toMatch(/station network/)
    expect((await world.gaugewright('key', 'revoke', 'none', '--db', db)).err).toContain('KEY_UNKNOWN')
    expect((await world.gaugewright('key', 'add', 'x', '--scopes', 'everything', '--db', db)).code).toBe(2)
  })
})
