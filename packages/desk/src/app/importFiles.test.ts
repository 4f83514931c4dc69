import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { dlyText } from '../../test/support/dlyText.ts'
import { tempFiles } from '../../test/support/tempFiles.ts'
import { fileIntake } from '../intake/fileIntake.ts'
import type { Ledger } from '../ports/ledger.ts'
import { openMemoryLedger } from '../store/memory/memoryLedger.ts'
import type { ImportAsk } from './import/importAsk.ts'
import { importFiles } from './importFiles.ts'

const files = tempFiles()
const gaugesCsv = 'gauge,lat,lon,elev_m,name,observer\nA,45.5,11,100,Upper mill,P. One\nB,45.6,11.2,,Lower mill,\n'
const readingsCsv =
  'gauge,day,amount,first_day\nA,2026-03-01,1.5,\nB,2026-03-01,T,\nA,2026-03-03,0,\nB,2026-03-03,12,2026-03-02\n'

let ledger: Ledger
let nextId: number
/** 2026-03-29 was the night of the change of clocks in Rome. */
let nowUtc: string

beforeEach(() => {
  ledger = openMemoryLedger()
  nextId = 0
  nowUtc = '2026-04-01T12:00:00Z'
})

async function bring(paths: string[], ask: Partial<ImportAsk> = {}) {
  const ports = { ledger, clock: { nowUtc: () => nowUtc }, newId: () => `id-${++nextId}` }
  return await importFiles(ports, fileIntake, {
    paths,
    network: {},
    localTimeZone: 'Europe/Rome',
    unit: 'mm',
    flagged: 'keep',
    wereInches: false,
    ...ask,
  })
}

async function bringGood(paths: string[], ask: Partial<ImportAsk> = {}) {
  const answer = await bring(paths, ask)
  if (!answer.ok) throw new Error(JSON.stringify(answer.problem))
  return answer.value
}

/** What the ledger holds as current, as text. */
async function held(): Promise<string[]> {
  const [network] = await ledger.networks()
  const readings = await ledger.readings(network?.id ?? '', '0001-01-01', '9999-12-31')
  return readings.map(({ gaugeId, firstDay, lastDay, amountUm, isTrace }) => {
    const days = firstDay === lastDay ? lastDay : `${firstDay}…${lastDay}`
    return `${gaugeId} ${days} ${isTrace ? 'T' : amountUm}`
  })
}

const allOfIt = ['A 2026-03-01 1500', 'B 2026-03-01 T', 'A 2026-03-03 0', 'B 2026-03-02…2026-03-03 12000']

describe('bringing gauges and readings', () => {
  it('takes gauges and readings in one delivery, in any order of files, and makes the network', async () => {
    const report = await bringGood([files.write('r.csv', readingsCsv), files.write('g.csv', gaugesCsv)])
    expect(report.networkIsNew).toBe(true)
    expect(report.network).toMatchObject({ id: 'network', timeZone: 'Europe/Rome', readingTime: '07:00', unit: 'mm' })
    expect(report.files.map(({ kind, gauges, readings }) => ({ kind, gauges, readings }))).toEqual([
      { kind: 'gauges', gauges: { added: 2, changed: 0, same: 0 }, readings: null },
      {
        kind: 'readings',
        gauges: { added: 0, changed: 0, same: 0 },
        readings: { stored: 4, already: 0, superseding: 0 },
      },
    ])
    expect(await held()).toEqual(allOfIt)
    expect(
      (await ledger.gauges('network')).map(({ id, code, name, elevationM, observerName }) => [
        id,
        code,
        name,
        elevationM,
        observerName,
      ]),
    ).toEqual([
      ['A', 'A', 'Upper mill', 100, 'P. One'],
      ['B', 'B', 'Lower mill', null, null],
    ])
  })

  it('changes nothing when the same files come again', async () => {
    const paths = [files.write('g.csv', gaugesCsv), files.write('r.csv', readingsCsv)]
    await bringGood(paths)
    const before = await ledger.readings('network', '2026-01-01', '2026-12-31')
    const again = await bringGood(paths)
    expect(again.networkIsNew).toBe(false)
    expect(again.files[0]?.gauges).toEqual({ added: 0, changed: 0, same: 2 })
    expect(again.files[1]?.readings).toEqual({ stored: 0, already: 4, superseding: 0 })
    expect(await ledger.readings('network', '2026-01-01', '2026-12-31')).toEqual(before)
  })

  it('takes another amount for the same gauge and day as a correction, and keeps the first', async () => {
    await bringGood([files.write('g.csv', gaugesCsv), files.write('r.csv', readingsCsv)])
    const report = await bringGood([files.write('r2.csv', 'gauge,day,amount\nA,2026-03-01,15\nB,2026-03-04,1\n')])
    expect(report.files[0]?.readings).toEqual({ stored: 2, already: 0, superseding: 1 })
    expect(await held()).toEqual(['A 2026-03-01 15000', ...allOfIt.slice(1), 'B 2026-03-04 1000'])
    const [corrected] = await ledger.readingsOfGauge('network', 'A', '2026-03-01', '2026-03-01')
    expect((await ledger.reading('network', corrected?.id ?? ''))?.superseded.map(({ amountUm }) => amountUm)).toEqual([
      1500,
    ])
  })

  it('keeps the text, the unit and the interval of a reading, across a change of the clocks', async () => {
    const text = 'gauge,day,amount,text,remark\nA,2026-03-29,0.04,.04,windy\nA,2026-03-30,12 mm,,\n'
    await bringGood([files.write('g.csv', gaugesCsv), files.write('r.csv', text)], { unit: 'in' })
    expect(await ledger.readings('network', '2026-03-29', '2026-03-30')).toMatchObject([
      {
        amountUm: 1016,
        text: '.04',
        unit: 'in',
        remark: 'windy',
        door: 'import',
        receivedAtUtc: nowUtc,
        startsAtUtc: '2026-03-28T06:00:00Z',
        endsAtUtc: '2026-03-29T05:00:00Z',
      },
      {
        amountUm: 12_000,
        text: '12 mm',
        unit: 'mm',
        startsAtUtc: '2026-03-29T05:00:00Z',
        endsAtUtc: '2026-03-30T05:00:00Z',
      },
    ])
  })

  it('leaves as it is what a later file of gauges leaves out', async () => {
    await bringGood([files.write('g.csv', gaugesCsv)])
    const report = await bringGood([files.write('g2.csv', 'gauge,lat,lon\nA,45.7,11\n')])
    expect(report.files[0]?.gauges).toEqual({ added: 0, changed: 1, same: 0 })
    expect((await ledger.gauges('network'))[0]).toMatchObject({ latDeg: 45.7, name: 'Upper mill', elevationM: 100 })
  })

  it('takes a reading that a file gives twice once, and tells', async () => {
    const text = 'gauge,day,amount\nA,2026-03-01,1.5\nA,2026-03-01,1.50\n'
    const report = await bringGood([files.write('g.csv', gaugesCsv), files.write('r.csv', text)])
    expect(report.files[1]?.readings?.stored).toBe(1)
    expect(report.files[1]?.passedOver).toEqual({ 'given more than once': 1 })
  })
})

describe('a delivery that is refused', () => {
  it.each([
    [
      'a bad amount',
      'gauge,day,amount\nA,2026-03-05,1\nA,2026-03-06,1.2.3\n',
      'AMOUNT_TWO_POINTS',
      'r3.csv line 3, amount: found "1.2.3"',
    ],
    [
      'an unknown gauge',
      'gauge,day,amount\nA,2026-03-05,1\nZ,2026-03-06,1\n',
      'GAUGE_UNKNOWN',
      'r3.csv line 3, gauge: found "Z", wanted the code of a known gauge.',
    ],
    [
      'a day to come',
      'gauge,day,amount\nA,2026-03-05,1\nA,2026-04-03,1\n',
      'DAY_NOT_VALID',
      'r3.csv line 3, day: found "2026-04-03", wanted a day that has already come.',
    ],
    [
      'two amounts for one day',
      'gauge,day,amount\nA,2026-03-05,1\nA,2026-03-05,2\n',
      'READING_TWICE',
      'r3.csv line 3, amount: found "2"',
    ],
    [
      'a column of a gauge that is not known',
      'day,A,Z\n2026-03-05,1,2\n',
      'GAUGE_UNKNOWN',
      'r3.csv line 2, Z: found "Z"',
    ],
  ])('for %s leaves the ledger as it was, even after good files and rows', async (_, text, code, seen) => {
    await bringGood([files.write('g.csv', gaugesCsv), files.write('r.csv', readingsCsv)])
    const gaugeC = files.write('g3.csv', 'gauge,lat,lon\nC,45,11\nA,1,1\n')
    const answer = await bring([gaugeC, files.write('r3.csv', text)])
    expect(answer).toMatchObject({ ok: false, problem: { code, seen: expect.stringContaining(seen) } })
    expect(await held()).toEqual(allOfIt)
    expect((await ledger.gauges('network')).map(({ code, latDeg }) => [code, latDeg])).toEqual([
      ['A', 45.5],
      ['B', 45.6],
    ])
  })

  it('makes no network either', async () => {
    expect((await bring([files.write('r.csv', readingsCsv)])).ok).toBe(false)
    expect(await ledger.networks()).toEqual([])
  })

  it.each([
    ['without a unit', { unit: undefined }, 'UNIT_MISSING'],
    ['for a zone that does not exist', { network: { timeZone: 'Mars/Olympus' } }, 'TIME_ZONE_UNKNOWN'],
    ['for no clear hour', { network: { readingTime: '7 am' } }, 'READING_TIME_UNCLEAR'],
    ['with a column that is not there', { columns: { day: 'When' } }, 'COLUMN_MISSING'],
  ] as const)('is refused %s', async (_, ask, code) => {
    const paths = [files.write('r.csv', readingsCsv)]
    expect(await bring(paths, ask)).toMatchObject({ ok: false, problem: { code } })
  })

  it('does not move a network to another zone or hour', async () => {
    await bringGood([files.write('g.csv', gaugesCsv)])
    const answer = await bring([files.write('g.csv', gaugesCsv)], { network: { timeZone: 'UTC' } })
    expect(answer).toMatchObject({ ok: false, problem: { code: 'NETWORK_DIFFERS' } })
  })

  it('asks which network where there are several', async () => {
    await bringGood([files.write('g.csv', gaugesCsv)], { network: { id: 'one' } })
    await bringGood([files.write('g.csv', gaugesCsv)], { network: { id: 'two' } })
    const answer = await bring([files.write('g.csv', gaugesCsv)])
    expect(answer).toMatchObject({
      ok: false,
      problem: { code: 'NETWORK_UNCLEAR', seen: 'The ledger has several networks: one, two.' },
    })
  })

  it('says what it cannot tell of a file', async () => {
    const answer = await bring([files.write('odd.csv', 'one,two\n1,2\n')])
    expect(answer).toMatchObject({ ok: false, problem: { code: 'FILE_KIND_UNCLEAR' } })
  })
})

describe('with keepGood', () => {
  const bad =
    'Station;day;amount;first_day\nA;2026-03-05;1,5;\nZ;2026-03-06;2;\nB;2026-03-32;"3;0";\nB;2026-03-07;4;2026-03-06\nA;2026-03-05;9;\n'
  const columns = { gauge: 'Station' }

  it('takes the good rows, writes the others with reasons, and takes them when mended', async () => {
    await bringGood([files.write('g.csv', gaugesCsv)])
    const keepGood = join(files.folder, 'refused.csv')
    const ask = { keepGood, columns, decimal: 'comma' } as const
    const report = await bringGood([files.write('r.csv', bad)], ask)
    expect(report.files[0]?.readings?.stored).toBe(2)
    expect(report.files[0]?.refused).toEqual({ rows: 3, file: keepGood })
    const refused = readFileSync(keepGood, 'utf8')
    expect(refused.split('\n')).toEqual([
      'Station;day;amount;first_day;refused_because',
      'Z;2026-03-06;2;;"r.csv line 3, Station: found ""Z"", wanted the code of a known gauge."',
      'B;2026-03-32;"3;0";;"r.csv line 4, day: found ""2026-03-32"", wanted a date like 2026-03-29."',
      'A;2026-03-05;9;;"r.csv line 6, amount: found ""9"", wanted the amount that stands for the same gauge and day on an earlier line."',
      '',
    ])
    const mended = refused
      .replace('Z;2026', 'B;2026')
      .replace('2026-03-32;"3;0"', '2026-03-31;3,0')
      .replace('A;2026-03-05;9', 'A;2026-03-08;9')
    writeFileSync(keepGood, mended)
    expect((await bringGood([keepGood], { columns, decimal: 'comma' })).files[0]?.readings?.stored).toBe(3)
    expect(await held()).toEqual([
      'A 2026-03-05 1500',
      'B 2026-03-06 2000',
      'B 2026-03-06…2026-03-07 4000',
      'A 2026-03-08 9000',
      'B 2026-03-31 3000',
    ])
  })

  it('gives rows that are still wrong back in the same shape', async () => {
    await bringGood([files.write('g.csv', gaugesCsv)])
    const first = join(files.folder, 'first.csv')
    const second = join(files.folder, 'second.csv')
    await bringGood([files.write('r.csv', bad)], { keepGood: first, columns, decimal: 'comma' })
    writeFileSync(first, readFileSync(first, 'utf8').replace('Z;2026', 'B;2026'))
    await bringGood([first], { keepGood: second, columns, decimal: 'comma' })
    const lines = readFileSync(second, 'utf8').split('\n')
    expect(lines[0]).toBe('Station;day;amount;first_day;refused_because')
    expect(lines[1]).toContain('B;2026-03-32;"3;0";;"first.csv line 3, day')
  })

  it('gives the refused cells of a wide table as a wide table', async () => {
    await bringGood([files.write('g.csv', gaugesCsv)])
    const keepGood = join(files.folder, 'wide.csv')
    await bringGood([files.write('r.csv', 'day,A,B\n2026-03-05,1,x\n2026-03-06,y,2\n2026-03-07,3,4\n')], { keepGood })
    expect(await held()).toEqual(['A 2026-03-05 1000', 'B 2026-03-06 2000', 'A 2026-03-07 3000', 'B 2026-03-07 4000'])
    const rows = readFileSync(keepGood, 'utf8')
      .split('\n')
      .map((line) => line.split(',').slice(0, 3).join(','))
    expect(rows).toEqual(['day,A,B', '2026-03-05,,x', '2026-03-06,y,', ''])
    writeFileSync(keepGood, readFileSync(keepGood, 'utf8').replace(',,x', ',,8').replace(',y,', ',7,'))
    expect((await bringGood([keepGood])).files[0]?.readings?.stored).toBe(2)
  })

  it('writes no file when nothing is refused, and leaves none when the delivery fails', async () => {
    await bringGood([files.write('g.csv', gaugesCsv)])
    const keepGood = join(files.folder, 'nothing.csv')
    expect((await bringGood([files.write('r.csv', readingsCsv)], { keepGood })).files[0]?.refused).toBeNull()
    const broken = files.write('r.csv', 'gauge,day,amount\nZ,2026-03-05,1\n"A,2026-03-05,1\n')
    expect(await bring([broken], { keepGood })).toMatchObject({ ok: false, problem: { code: 'CSV_QUOTE_OPEN' } })
    expect(existsSync(keepGood)).toBe(false)
    expect(existsSync(`${keepGood}.part`)).toBe(false)
  })

  it('takes nothing where the refused rows cannot be written', async () => {
    await bringGood([files.write('g.csv', gaugesCsv)])
    const keepGood = join(files.folder, 'no such folder', 'refused.csv')
    const answer = await bring([files.write('r.csv', 'gauge,day,amount\nZ,2026-03-05,1\nA,2026-03-05,1\n')], {
      keepGood,
    })
    expect(answer).toMatchObject({ ok: false, problem: { code: 'FILE_NOT_WRITABLE' } })
    expect(await held()).toEqual([])
  })
})

describe('GHCN-Daily files', () => {
  const stations =
    'US1XXTT0001  45.1234 -110.5678 1234.5 XX UPPER VALLEY\nUS1XXTT0002  45.2000 -110.6000 1100.0 XX LOWER VALLEY\n'
  const dly =
    dlyText('US1XXTT0001', '202603', 'PRCP', { 1: [51], 2: [0, 'T  '], 3: [0, 'P  '] }) +
    dlyText('US1XXTT0001', '202603', 'MDPR', { 6: [157] }) +
    dlyText('US1XXTT0001', '202603', 'DAPR', { 6: [3] })

  it('make gauges of the stations that they have readings of', async () => {
    const paths = [files.write('a.dly', dly), files.write('stations.txt', stations)]
    const report = await bringGood(paths, { unit: undefined })
    expect(report.files[1]).toMatchObject({
      kind: 'dly',
      gauges: { added: 1, changed: 0, same: 0 },
      readings: { stored: 3, already: 0, superseding: 0 },
      passedOver: { 'missing, presumed zero (flag P)': 1 },
    })
    expect(await ledger.gauges('network')).toMatchObject([
      { code: 'US1XXTT0001', name: 'UPPER VALLEY', area: 'XX', elevationM: 1234.5 },
    ])
    expect(await held()).toEqual([
      'US1XXTT0001 2026-03-01 5100',
      'US1XXTT0001 2026-03-02 T',
      'US1XXTT0001 2026-03-04…2026-03-06 15700',
    ])
    expect((await bringGood(paths, { unit: undefined })).files[1]?.readings).toEqual({
      stored: 0,
      already: 3,
      superseding: 0,
    })
  })

  it('are refused where a station is not known', async () => {
    expect(await bring([files.write('a.dly', dly)], { unit: undefined })).toMatchObject({
      ok: false,
      problem: { code: 'GAUGE_UNKNOWN', seen: expect.stringContaining('a.dly line 1, station: found "US1XXTT0001"') },
    })
  })

  it('give refused values back as lines that can be mended', async () => {
    const broken = dlyText('US1XXTT0001', '202603', 'PRCP', { 1: [51], 2: [-7] })
    const keepGood = join(files.folder, 'refused.dly')
    const station = files.write('stations.txt', stations)
    await bringGood([files.write('a.dly', broken)], { stations: station, keepGood })
    writeFileSync(keepGood, readFileSync(keepGood, 'utf8').replace('   -7', '    7'))
    await bringGood([keepGood])
    expect(await held()).toEqual(['US1XXTT0001 2026-03-01 5100', 'US1XXTT0001 2026-03-02 700'])
  })
})
