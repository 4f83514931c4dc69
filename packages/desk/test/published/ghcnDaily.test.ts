/**
 * GHCN-Daily files. Source: the readme of GHCN-Daily, sections III (`.dly`), IV (station list) [Menne2012]; the
 * example of a total over a weekend is common practice. The lines here were laid out by hand after the readme.
 */
import { isoFromEpochDay } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { fileIntake } from '../../src/intake/fileIntake.ts'
import type { DlyAsk, ReadingRow, RefusedRow } from '../../src/ports/intakeFiles.ts'
import { dlyText } from '../support/dlyText.ts'
import { tempFiles } from '../support/tempFiles.ts'

const files = tempFiles()
const station = 'US1XXTT0001'

async function readDly(text: string, ask: Partial<DlyAsk> = {}) {
  const stream = await fileIntake.openDly(files.write('x.dly', text), {
    flagged: 'keep',
    wereInches: false,
    gaugeIndex: () => 0,
    ...ask,
  })
  const rows: ReadingRow[] = []
  for await (const block of stream.rows) rows.push(...block)
  return { rows: rows.map(worded), passedOver: stream.passedOver }
}

function worded(row: ReadingRow): string {
  const days = row.firstDay === row.lastDay ? '' : `${isoFromEpochDay(row.firstDay)}…`
  return `${days}${isoFromEpochDay(row.lastDay)} ${row.isTrace ? 'T' : row.amountUm} "${row.text}"${row.remark === null ? '' : ` (${row.remark})`}`
}

describe('the layout of a .dly line', () => {
  it('is 269 characters long, with the value of day 31 in columns 262-266', () => {
    const line = dlyText(station, '202601', 'PRCP', { 31: [12345, 'ABC'] }).trimEnd()
    expect(line.length).toBe(269)
    expect(line.slice(261, 266)).toBe('12345')
    expect(line.slice(266)).toBe('ABC')
  })

  it('is read by those columns: first day, last day, tenths of a millimetre', async () => {
    const { rows } = await readDly(dlyText(station, '202601', 'PRCP', { 1: [3, '  N'], 31: [958, '  N'] }))
    expect(rows).toEqual(['2026-01-01 300 "0.3"', '2026-01-31 95800 "95.8"'])
  })

  it('is read when an editor has cut the blanks at its end', async () => {
    const { rows } = await readDly(`${dlyText(station, '202601', 'PRCP', { 31: [7] }).trimEnd()}\n`)
    expect(rows).toEqual(['2026-01-31 700 "0.7"'])
  })

  it('has -9999 for missing days and for days that do not exist', async () => {
    const { rows } = await readDly(dlyText(station, '202602', 'PRCP', { 28: [0] }))
    expect(rows).toEqual(['2026-02-28 0 "0.0"'])
  })
})

describe('flags and elements', () => {
  it('measurement flag T is a trace, P is silence, a quality flag is told', async () => {
    const text = dlyText(station, '202603', 'PRCP', { 2: [0, 'T N'], 3: [0, 'P  '], 4: [2540, ' X7'], 5: [51, 'B  '] })
    expect(await readDly(text)).toEqual({
      rows: [
        '2026-03-02 T "T"',
        '2026-03-04 254000 "254.0" (archive: quality flag X)',
        '2026-03-05 5100 "5.1" (archive: measurement flag B)',
      ],
      passedOver: { 'missing, presumed zero (flag P)': 1 },
    })
    expect((await readDly(text, { flagged: 'leave-out' })).passedOver).toEqual({
      'missing, presumed zero (flag P)': 1,
      'flagged by the archive': 1,
    })
  })

  it('a Monday total of 0.62 in since Friday, MDPR 157 with DAPR 3, is one total from Saturday to Monday', async () => {
    // 2026-03-06 is a Friday; PRCP is missing on all three days of the total.
    const text =
      dlyText(station, '202603', 'DAPR', { 9: [3] }) +
      dlyText(station, '202603', 'MDPR', { 9: [157] }) +
      dlyText(station, '202603', 'PRCP', { 6: [5] })
    expect((await readDly(text)).rows).toEqual(['2026-03-06 500 "0.5"', '2026-03-07…2026-03-09 15700 "15.7"'])
    expect((await readDly(text, { wereInches: true })).rows[1]).toBe('2026-03-07…2026-03-09 15748 "15.7"')
  })

  it('a total without its number of days is passed over, and told', async () => {
    expect(await readDly(dlyText(station, '202603', 'MDPR', { 9: [157] }))).toEqual({
      rows: [],
      passedOver: { 'totals without a number of days': 1 },
    })
  })

  it('a total may begin in the month before', async () => {
    const text = dlyText(station, '202603', 'MDPR', { 1: [20] }) + dlyText(station, '202603', 'DAPR', { 1: [4] })
    expect((await readDly(text)).rows).toEqual(['2026-02-26…2026-03-01 2000 "2.0"'])
  })

  it('other elements are left alone', async () => {
    expect((await readDly(dlyText(station, '202603', 'SNOW', { 1: [20] }))).rows).toEqual([])
  })
})

describe('what is refused', () => {
  it.each([
    [
      'a value that is no number',
      dlyText(station, '202603', 'PRCP', { 2: [1] }).replace('    1', '   x1'),
      'DLY_LAYOUT',
      'x.dly line 1, columns 30-34: found "   x1"',
    ],
    [
      'a value on a day that does not exist',
      dlyText(station, '202602', 'PRCP', { 30: [1] }),
      'DLY_LAYOUT',
      'columns 254-258: found "1"',
    ],
    [
      'an amount below zero',
      dlyText(station, '202603', 'PRCP', { 1: [-5] }),
      'AMOUNT_NEGATIVE',
      'columns 22-26: found "-5"',
    ],
    [
      'a line that is cut off',
      dlyText(station, '202603', 'PRCP', {}).slice(0, 100),
      'DLY_LAYOUT',
      'x.dly line 1, columns 102-106: found nothing',
    ],
    [
      'a line of another kind',
      `${dlyText(station, '202603', 'PRCP', {})}hello\n`,
      'DLY_LAYOUT',
      'x.dly line 2, columns 1-21: found "hello"',
    ],
    ['a month 13', dlyText(station, '202613', 'PRCP', {}), 'DLY_LAYOUT', 'x.dly line 1, columns 1-21'],
  ])('%s, by line and columns', async (_, text, code, seen) => {
    const refusal = await readDly(text).catch((error: { problem: object }) => error.problem)
    expect(refusal).toMatchObject({ code, seen: expect.stringContaining(seen) })
  })

  it('keeps the good days when asked, and gives the bad ones as a line that can be mended', async () => {
    const refused: RefusedRow[] = []
    const text = dlyText(station, '202603', 'PRCP', { 1: [10], 2: [-5, '  N'], 3: [30] })
    const { rows } = await readDly(text, { onRefused: (row) => refused.push(row) })
    expect(rows).toEqual(['2026-03-01 1000 "1.0"', '2026-03-03 3000 "3.0"'])
    expect(refused.map(({ fields }) => `${fields[0]}\n`)).toEqual([
      dlyText(station, '202603', 'PRCP', { 2: [-5, '  N'] }),
    ])
  })
})

describe('the list of stations', () => {
  it('is read by its columns: id 1-11, latitude 13-20, longitude 22-30, elevation 32-37, state 39-40, name 42-71', async () => {
    const path = files.write(
      'stations.txt',
      'US1XXTT0001  45.1234 -110.5678 1234.5 XX UPPER VALLEY 2 NW              GSN     72345\n',
    )
    expect(await fileIntake.kindOf(path, {})).toBe('stations')
    const stations = await fileIntake.readStations(path, {})
    expect(stations.get('US1XXTT0001')).toMatchObject({
      north: 45.1234,
      east: -110.5678,
      elevationM: 1234.5,
      area: 'XX',
      name: 'UPPER VALLEY 2 NW',
    })
  })

  it('has -999.9 where the elevation is not known', async () => {
    const path = files.write('stations.txt', 'XXM00000002 -33.0000  151.2000 -999.9    HARBOUR\n')
    const stations = await fileIntake.readStations(path, {})
    expect(stations.get('XXM00000002')).toMatchObject({
      north: -33,
      east: 151.2,
      elevationM: null,
      area: null,
      name: 'HARBOUR',
    })
  })
})
