import { epochDayFromIso } from '@gaugewright/science'
import { expect, it } from 'vitest'
import { tempFiles } from '../../test/support/tempFiles.ts'
import { type ReadingsTableOptions, readGaugesFile, readReadingsFile } from './readTables.ts'

const files = tempFiles()

/** Cells of a table as text: rows of days, columns of gauges; `.` is no reading. */
async function cells(name: string, content: string | Uint8Array, options: Partial<ReadingsTableOptions> = {}) {
  const answer = await readReadingsFile(files.write(name, content), { unit: 'mm', ...options })
  if (!answer.ok) return answer.problem
  const { table, gaugeIds, leftOut } = answer.value
  const rows = Array.from({ length: table.dayCount }, (_, day) =>
    gaugeIds.map((_, gauge) => {
      const cell = day * table.gaugeCount + gauge
      const span = table.spanDays[cell] ?? 0
      if (span === 0) return Number.isNaN(table.amountMm[cell]) ? '.' : 'amount without span'
      const amount = table.isTrace[cell] === 1 ? `T${table.amountMm[cell]}` : String(table.amountMm[cell])
      return span === 1 ? amount : `${amount}/${span}`
    }),
  )
  return { gaugeIds, firstDay: table.firstDay, rows, leftOut }
}

const march2 = epochDayFromIso('2026-03-02')

it('reads a long table: zero, trace and no reading kept apart, totals with their days, other columns left alone', async () => {
  const text = `gauge,day,amount,note,first_day
B,2026-03-02,0,dry,
A,2026-03-02,12.4,,
A,2026-03-04,30,,2026-03-03
B,2026-03-03,T,,
C,2026-03-04,,nobody,
`
  expect(await cells('long.csv', text)).toEqual({
    gaugeIds: ['B', 'A'],
    firstDay: march2,
    rows: [
      ['0', '12.4'],
      ['T0', '.'],
      ['.', '30/2'],
    ],
    leftOut: [],
  })
})

it('reads a wide table, gzip or not, and gives the same', async () => {
  const text = 'date,A,B,C\n2026-03-02,1.5,,0\n2026-03-03,,T,2\n'
  const wanted = {
    gaugeIds: ['A', 'B', 'C'],
    firstDay: march2,
    rows: [
      ['1.5', '.', '0'],
      ['.', 'T0', '2'],
    ],
    leftOut: [],
  }
  expect(await cells('wide.csv', text)).toEqual(wanted)
  expect(await cells('wide.csv.gz', text)).toEqual(wanted)
})

it('reads inches exactly', async () => {
  expect(await cells('in.csv', 'gauge,day,amount\nA,2026-03-02,0.07\n', { unit: 'in' })).toMatchObject({
    rows: [['1.778']],
  })
})

it('reads what other programs write: byte-order mark, CRLF, semicolons, decimal commas, capital names, UTF-16', async () => {
  const text = '\uFEFFGauge;Date;Amount\r\nA;2026-03-02;0,4\r\n'
  const wanted = { gaugeIds: ['A'], firstDay: march2, rows: [['0.4']], leftOut: [] }
  expect(await cells('bom.csv', text, { decimal: 'comma' })).toEqual(wanted)
  expect(await cells('utf16.csv', Buffer.from(text, 'utf16le'), { decimal: 'comma' })).toEqual(wanted)
})

it('reads columns by the names the user gives, and days in the order the user names', async () => {
  const text = 'Station\tWhen\tRain\tgauge\nA\t3/29/2026\t-9999\tx\nA\t3/30/2026\t5\tx\n'
  const options = {
    columns: { gauge: 'Station', day: 'When', amount: 'Rain' },
    dayFormat: 'm/d/y',
    missing: ['-9999'],
  } as const
  expect(await cells('mapped.csv', text, options)).toMatchObject({
    gaugeIds: ['A'],
    firstDay: epochDayFromIso('2026-03-30'),
    rows: [['5']],
  })
})

it('puts the readings in the order of the gauges asked for, and names the gauges left out', async () => {
  const text = 'day,B,X,A\n2026-03-02,2,9,1\n'
  expect(await cells('some.csv', text, { gaugeIds: ['A', 'B', 'C'] })).toEqual({
    gaugeIds: ['A', 'B', 'C'],
    firstDay: march2,
    rows: [['1', '2', '.']],
    leftOut: ['X'],
  })
})

it('takes the days asked for only', async () => {
  const text = 'day,A\n2026-03-01,1\n2026-03-02,2\n2026-03-03,3\n'
  expect(await cells('days.csv', text, { fromDay: march2, toDay: march2 })).toMatchObject({
    firstDay: march2,
    rows: [['2']],
  })
})

it('takes a reading given twice once', async () => {
  expect(await cells('same.csv', 'gauge,day,amount\nA,2026-03-02,1.0\nA,2026-03-02,1\n')).toMatchObject({
    rows: [['1']],
  })
})

const long = (row: string): string => `gauge,day,amount,first_day\nA,2026-03-01,1,\n${row}\n`

it.each([
  [
    'a day that is none',
    long('A,2026-02-30,1,'),
    'DAY_NOT_VALID',
    'f.csv line 3, day: found "2026-02-30", wanted a date like 2026-03-29.',
  ],
  ['a day in another order', long('A,02/03/2026,1,'), 'DAY_NOT_VALID', 'f.csv line 3, day: found "02/03/2026"'],
  [
    'a year before there were gauges',
    long('A,0206-03-02,1,'),
    'DAY_NOT_VALID',
    'f.csv line 3, day: found "0206-03-02", wanted a day since 1700.',
  ],
  ['no day', long('A,,1,'), 'DAY_NOT_VALID', 'f.csv line 3, day: found nothing'],
  [
    'no gauge',
    long(',2026-03-02,1,'),
    'GAUGE_EMPTY',
    'f.csv line 3, gauge: found nothing, wanted the code of a gauge.',
  ],
  [
    'an amount below zero',
    long('A,2026-03-02,-1,'),
    'AMOUNT_NEGATIVE',
    'f.csv line 3, amount: found "-1", wanted a depth in mm such as 12.4, T for a trace, or nothing.',
  ],
  [
    'an amount with two points',
    long('A,2026-03-02,1.2.3,'),
    'AMOUNT_TWO_POINTS',
    'f.csv line 3, amount: found "1.2.3"',
  ],
  ['words', long('A,2026-03-02,a lot,'), 'AMOUNT_UNREADABLE', 'f.csv line 3, amount: found "a lot"'],
  ['an unclear amount', long('A,2026-03-02,"1,250",'), 'AMOUNT_DECIMAL_UNCLEAR', 'f.csv line 3, amount: found "1,250"'],
  [
    'a decimal comma among commas',
    'gauge,day,amount\nA,2026-03-02,1,25\n',
    'CSV_TOO_MANY_FIELDS',
    'f.csv line 2: found 4 fields (the last "25"), wanted the 3 of the header.',
  ],
  [
    'a row that is cut off',
    'gauge,day,amount\nA,2026-03-02,1\nA,2026-0',
    'CSV_TOO_FEW_FIELDS',
    'f.csv line 3: found 2 fields, wanted at least 3.',
  ],
  [
    'a total that ends before it begins',
    long('A,2026-03-02,1,2026-03-03'),
    'SPAN_NOT_VALID',
    'f.csv line 3, first_day: found "2026-03-03"',
  ],
  [
    'a total over more than 255 days',
    long('A,2026-03-02,1,2025-06-20'),
    'SPAN_NOT_VALID',
    'f.csv line 3, first_day: found "2025-06-20"',
  ],
  [
    'two amounts for one day',
    long('A,2026-03-01,2,'),
    'READING_TWICE',
    'f.csv line 3, gauge A on 2026-03-01: found "2"',
  ],
  ['an open quotation mark', long('"A,2026-03-01,2,'), 'CSV_QUOTE_OPEN', 'f.csv line 3: a quotation mark'],
  [
    'columns without names we know',
    'station,when,rain\nA,2026-03-01,1\n',
    'COLUMN_MISSING',
    'f.csv line 1 has no column gauge, day, amount: found "station,when,rain"',
  ],
  ['two columns of one name', 'day,A,A\n2026-03-01,1,2\n', 'COLUMN_TWICE', 'f.csv line 1 has two columns named "A".'],
  ['a header alone', 'gauge,day,amount\n', 'NO_READINGS', 'f.csv has no readings.'],
  ['a bad cell of a wide table', 'day,A,B\n2026-03-01,1,x2\n', 'AMOUNT_UNREADABLE', 'f.csv line 2, B: found "x2"'],
  ['nothing at all', '', 'FILE_EMPTY', 'f.csv is empty.'],
  [
    'a mistyped year',
    'gauge,day,amount\nA,1726-03-02,1\nB,2026-03-02,1\n' +
      Array.from({ length: 1500 }, (_, n) => `G${n},2026-03-02,0\n`).join(''),
    'TABLE_TOO_LARGE',
    'f.csv spans 1726-03-02 to 2026-03-02 at 1502 gauges',
  ],
])('refuses %s in one line that says where, what and what was wanted', async (_, text, code, seen) => {
  const problem = await cells('f.csv', text)
  expect(problem).toMatchObject({ code })
  expect((problem as { seen: string }).seen).toContain(seen)
  expect((problem as { seen: string; advice: string }).advice).not.toBe('')
  expect(Object.values(problem).join(' ')).not.toMatch(/[\r\n]/)
})

it('refuses what is not there, a folder, other encodings and cut-off gzip', async () => {
  const whole = files.write('whole.csv.gz', long('A,2026-03-02,1,'))
  const { readFileSync } = await import('node:fs')
  const codes = []
  for (const path of [
    `${files.folder}/none.csv`,
    files.folder,
    files.write('latin.csv', Buffer.from('gauge,day,amount\nCa\xf1ada,2026-03-02,1\n', 'latin1')),
    files.write('cut.csv', readFileSync(whole).subarray(0, 40)),
  ]) {
    const answer = await readReadingsFile(path, { unit: 'mm' })
    codes.push(answer.ok ? 'read' : answer.problem.code)
  }
  expect(codes).toEqual(['FILE_NOT_FOUND', 'FILE_UNREADABLE', 'FILE_ENCODING', 'FILE_GZIP_BROKEN'])
})

it('reads older encodings that are named', async () => {
  const text = Buffer.from('gauge,day,amount\nCa\xf1ada,2026-03-02,1\n', 'latin1')
  expect(await cells('latin.csv', text, { encoding: 'windows-1252' })).toMatchObject({ gaugeIds: ['Cañada'] })
})

it('says so when none of the gauges asked for has a reading', async () => {
  expect(await cells('other.csv', 'day,X\n2026-03-02,1\n', { gaugeIds: ['A'] })).toMatchObject({
    code: 'NO_READINGS',
    seen: 'other.csv has no readings of the gauges asked for, only of others (X).',
  })
})

it('reads gauges in degrees, with elevation where there is one', async () => {
  const path = files.write('g.csv', 'id,name,lat,lon,elev_m\nA,"Mill, upper",45.5,-11.25,102\nB,,-33,151,\n')
  const answer = await readGaugesFile(path)
  expect(answer).toEqual({
    ok: true,
    value: {
      gaugeIds: ['A', 'B'],
      plane: 'degrees',
      latDeg: Float64Array.of(45.5, -33),
      lonDeg: Float64Array.of(-11.25, 151),
      xM: Float64Array.of(Number.NaN, Number.NaN),
      yM: Float64Array.of(Number.NaN, Number.NaN),
      elevationM: Float64Array.of(102, Number.NaN),
      names: ['Mill, upper', ''],
    },
  })
})

it('reads points in metres on a plane', async () => {
  const path = files.write('p.csv', 'point,x_m,y_m,elev_m\nP1,1e3,-20.5,\n')
  const answer = await readGaugesFile(path, { idNames: ['point'] })
  expect(answer).toMatchObject({
    ok: true,
    value: { gaugeIds: ['P1'], plane: 'metres', xM: Float64Array.of(1000), yM: Float64Array.of(-20.5) },
  })
})

it.each([
  ['id,lat,lon\nA,91,0\n', 'POSITION_NOT_VALID', 'g.csv line 2, lat: found "91", wanted degrees north, -90 to 90.'],
  ['id,lat,lon\nA,45,\n', 'POSITION_NOT_VALID', 'g.csv line 2, lon: found nothing'],
  ['id,lat,lon\nA,1,2\nA,3,4\n', 'GAUGE_TWICE', 'g.csv line 3: gauge "A" stands on line 2 already.'],
  ['id,lat,lon\n,1,2\n', 'GAUGE_EMPTY', 'g.csv line 2, id: found nothing'],
  ['id,lat,lon,elev_m\nA,1,2,high\n', 'GAUGE_FIELD_NOT_VALID', 'g.csv line 2, elev_m: found "high"'],
  ['id,latitude,longitude\nA,1,2\n', 'COLUMN_MISSING', 'g.csv line 1: found the columns "id,latitude,longitude"'],
  ['id,lat,lon\n', 'FILE_EMPTY', 'g.csv has a header and no rows.'],
])('refuses bad gauges in one line: %j', async (text, code, seen) => {
  const answer = await readGaugesFile(files.write('g.csv', text))
  expect(answer).toMatchObject({ ok: false, problem: { code } })
  expect(answer.ok ? '' : answer.problem.seen).toContain(seen)
})
