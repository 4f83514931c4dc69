import { describe, expect, it } from 'vitest'
import { formatInstant } from '../reading/instant.ts'
import { decodeShef } from './decodeShef.ts'
import { settledShef } from './settleShef.ts'
import { shefAmount, shefWholeDays } from './shefAmount.ts'

const nowUtcMs = Date.UTC(2012, 6, 5)
const decode = (...lines: string[]) => decodeShef(lines.join('\n'), { nowUtcMs })
const said = (...lines: string[]) =>
  decode(...lines).values.map(({ location, code, datum, observedAtUtcMs }) => [
    location,
    code,
    datum.kind === 'number' ? datum.value : datum.kind,
    formatInstant(observedAtUtcMs),
  ])
const problems = (...lines: string[]) =>
  decode(...lines).problems.map(({ code, line, column, severity }) => [code, line, column, severity])

describe('the terms of a message', () => {
  it('read a clock on the wall, summer time and a fixed zone', () => {
    const at = (zone: string, date: string) => said(`.A EGTM7 ${date} ${zone} DH08/HG 1.5`)[0]?.[3]
    expect(at('C', '20120115')).toBe('2012-01-15T14:00:00Z')
    expect(at('C', '20120715')).toBe('2012-07-15T13:00:00Z')
    expect(at('CS', '20120715')).toBe('2012-07-15T14:00:00Z')
    expect(at('Z', '20120715')).toBe('2012-07-15T08:00:00Z')
  })

  it('fill in the hour that is not given: the end of a local day, noon in UTC [SHEF2012] 4.4.1', () => {
    expect(said('.A EGTM7 120115 CS/HG 1.5')[0]?.[3]).toBe('2012-01-16T06:00:00Z')
    expect(said('.A EGTM7 120115/HG 1.5')[0]?.[3]).toBe('2012-01-15T12:00:00Z')
  })

  it('take the nearest year where none is given [SHEF2012] 4.1.4', () => {
    const year = (date: string) => String(said(`.A EGTM7 ${date} Z/HG 1`)[0]?.[3]).slice(0, 4)
    expect([year('0107'), year('0103'), year('1228'), year('0705')]).toEqual(['2012', '2013', '2012', '2012'])
    expect(year('0229')).toBe('2012')
  })

  it('move by groups: hours, days, days of the year, and steps back', () => {
    expect(
      said(
        '.A EGTM7 20120612 Z DH06/HG 1/DH1230/HG 2/DD13/HG 3/DM061407/HG 4/DJ001/HG 5/DRD-1/HG 6/DRE+0/HG 7/DRM+2/HG 8',
      ).map(([, , , at]) => at),
    ).toEqual([
      '2012-06-12T06:00:00Z',
      '2012-06-12T12:30:00Z',
      '2012-06-13T12:30:00Z',
      '2012-06-14T07:00:00Z',
      '2012-01-01T07:00:00Z',
      '2011-12-31T07:00:00Z',
      '2012-01-31T07:00:00Z',
      '2012-03-01T07:00:00Z',
    ])
  })

  it('hold a creation time, units, a qualifier and a span until they are changed', () => {
    const { values } = decode('.A EGTM7 20120612 Z DH06/DC201206120915/DUS/DQE/PP 5.1/DUE/DQZ/PC 0.2R/DVH06/PPV 0.1')
    expect(
      values.map(({ units, qualifier, createdAtUtcMs, variable }) => [units, qualifier, createdAtUtcMs, variable]),
    ).toEqual([
      ['metric', 'E', Date.UTC(2012, 5, 12, 9, 15), null],
      ['english', 'R', Date.UTC(2012, 5, 12, 9, 15), null],
      ['english', 'Z', Date.UTC(2012, 5, 12, 9, 15), { unit: 'H', count: 6 }],
    ])
  })
})

describe('values', () => {
  it('know every mark for missing, which is not a zero [SHEF2012] 5.1.1', () => {
    for (const mark of ['+', '-', 'm', 'mm', 'M', 'MM', '-9999', '-9999.0']) {
      expect(said(`.A EGTM7 20120612 Z/PP ${mark}`)).toEqual([['EGTM7', 'PPDRZZZ', 'missing', '2012-06-12T12:00:00Z']])
    }
  })

  it('are hundredths without a point, with a warning; a metric one is refused [SHEF2012] 5.1.2', () => {
    expect(said('.A EGTM7 20120612 Z/PP 38/PC 1234/HG 7').map((row) => row.slice(0, 3))).toEqual([
      ['EGTM7', 'PPDRZZZ', 0.38],
      ['EGTM7', 'PCIRZZZ', 12.34],
      ['EGTM7', 'HGIRZZZ', 7],
    ])
    expect(problems('.A EGTM7 20120612 Z/PP 38')).toEqual([['SHEF_DECIMAL_MISSING', 1, 24, 'warned']])
    expect(problems('.A EGTM7 20120612 Z/PP 0')).toEqual([])
    expect(problems('.A EGTM7 20120612 Z/DUS/PP 38')).toEqual([['SHEF_DECIMAL_MISSING', 1, 28, 'refused']])
  })

  it('may be a trace only where rain or snow is meant [SHEF2012] App. J 031', () => {
    expect(said('.A EGTM7 20120612 Z/SF T/SD t').map((row) => row.slice(0, 3))).toEqual([
      ['EGTM7', 'SFDRZZZ', 'trace'],
      ['EGTM7', 'SDIRZZZ', 'trace'],
    ])
    expect(problems('.A EGTM7 20120612 Z/HG T')).toEqual([['SHEF_TRACE', 1, 24, 'refused']])
  })

  it('become exact depths', () => {
    const depth = (field: string) => decode(`.A EGTM7 20120612 Z/${field}`).values.map(shefAmount)[0]
    expect(depth('PP 0.38')).toEqual({ amountUm: 9652, isTrace: false })
    expect(depth('PP 38')).toEqual({ amountUm: 9652, isTrace: false })
    expect(depth('DUS/PP 12.4')).toEqual({ amountUm: 12_400, isTrace: false })
    expect(depth('PP T')).toEqual({ amountUm: 0, isTrace: true })
    expect(depth('PP M')).toBeNull()
    expect(depth('SF 3.0')).toBeNull()
  })

  it('cover whole days or not', () => {
    const days = (fields: string) => decode(`.A EGTM7 20120612 C DH07/${fields}`).values.map(shefWholeDays)
    expect(days('PP 1.0/PPH 1.0/PPW 1.0/DVD3/PPV 1.0/DVH48/PPV 2.0/DVH7/PPV 3.0/PPP 1.1/DH13/PPP 0.2')).toEqual([
      1,
      null,
      7,
      3,
      2,
      null,
      1,
      null,
    ])
  })
})

describe('lines', () => {
  it('are each accounted for, one outcome a line', () => {
    const { lines, problems } = decode(
      '123',
      'SRUS53 KXXX 121300',
      'RRMXXX',
      ': made by hand',
      '',
      '.B FTW 20120612 Z/PP',
      'AAAA1 0.10 : a note, and /more/',
      'BBBB1',
      '.END',
      '$$',
    )
    expect(lines).toEqual([
      'outside',
      'outside',
      'outside',
      'comment',
      'blank',
      'frame',
      'values',
      'no report',
      'frame',
      'outside',
    ])
    expect(problems).toEqual([])
  })

  it('that were meant as data, and are none, are refused by place', () => {
    expect(problems('A EGTM7 20120612 Z/PP 0.1')).toEqual([['SHEF_OUTSIDE', 1, 1, 'refused']])
    expect(problems(' .A EGTM7 20120612 Z/PP 0.1')).toEqual([['SHEF_TAG', 1, 2, 'refused']])
    expect(problems('.C EGTM7 20120612 Z/PP 0.1')).toEqual([['SHEF_TAG', 1, 1, 'refused']])
    expect(problems('.A EG 20120612 Z/PP 0.1')).toEqual([['SHEF_LOCATION', 1, 4, 'refused']])
    expect(problems('.A EGTM7 20120631 Z/PP 0.1')).toEqual([['SHEF_DATE', 1, 10, 'refused']])
    expect(problems('.A EGTM7 20120612 Q/PP 0.1')).toEqual([['SHEF_TIME_ZONE', 1, 19, 'refused']])
    expect(problems('.A EGTM7 20120612 Z DH25/PP 0.1')).toEqual([['SHEF_DATE_GROUP', 1, 21, 'refused']])
    expect(problems('.A EGTM7 20120612 Z/PP 0.1/PP0.2/SD 1 2')).toEqual([
      ['SHEF_FIELD', 1, 28, 'refused'],
      ['SHEF_FIELD', 1, 39, 'refused'],
    ])
    expect(problems('.A EGTM7 20120612 Z/PP 0.1X')).toEqual([['SHEF_QUALIFIER', 1, 24, 'refused']])
    expect(problems('.A EGTM7 20120612 Z/PPO 0.1')).toEqual([['SHEF_CODE', 1, 21, 'refused']])
    expect(problems('.A EGTM7 20120612 Z/PPV 0.1')).toEqual([['SHEF_DURATION', 1, 21, 'refused']])
    expect(problems('.A EGTM7 20120612 Z/PP 1,2')).toEqual([['SHEF_VALUE', 1, 24, 'refused']])
    expect(problems('.A EGTM7 20120612 Z/PP 1.2 "snow')).toEqual([['SHEF_QUOTE_OPEN', 1, 28, 'refused']])
    expect(problems('.E EGTM7 20120612 Z/PP/1.2')).toEqual([['SHEF_INTERVAL', 1, 24, 'refused']])
  })

  it('behind a broken beginning are refused one by one, never passed over', () => {
    expect(problems('.B FTW 20121312 Z/PP', 'AAAA1 0.10', 'BBBB1 0.20', '.END')).toEqual([
      ['SHEF_DATE', 1, 8, 'refused'],
      ['SHEF_MESSAGE_BROKEN', 2, 1, 'refused'],
      ['SHEF_MESSAGE_BROKEN', 3, 1, 'refused'],
    ])
  })

  it('of a table that was cut off are told', () => {
    expect(problems('.B FTW 20120612 Z/PP', 'AAAA1 0.10')).toEqual([['SHEF_END_MISSING', 1, 1, 'refused']])
  })

  it('go on in order, and not otherwise', () => {
    expect(
      said('.A EGTM7 20120612 Z/HG 1.0/', '.A1 /PP 0.2', '.A2 SD 3').map(([, code, value]) => [code, value]),
    ).toEqual([
      ['HGIRZZZ', 1],
      ['PPDRZZZ', 0.2],
      ['SDIRZZZ', 3],
    ])
    expect(problems('.A EGTM7 20120612 Z/HG 1.0', '.A2 PP 0.2')).toEqual([['SHEF_CONTINUATION', 2, 1, 'refused']])
    expect(problems('.E1 0.2')).toEqual([['SHEF_CONTINUATION', 1, 1, 'refused']])
  })

  it('may carry several stations, and more values than codes are refused [SHEF2012] 4.5', () => {
    expect(said('.B FTW 20120612 Z/SD/PP', 'AAAA1 1/0.10, BBBB1 /0.20,CCCC1 DH06/3/0.30', '.END')).toEqual([
      ['AAAA1', 'SDIRZZZ', 1, '2012-06-12T12:00:00Z'],
      ['AAAA1', 'PPDRZZZ', 0.1, '2012-06-12T12:00:00Z'],
      ['BBBB1', 'PPDRZZZ', 0.2, '2012-06-12T12:00:00Z'],
      ['CCCC1', 'SDIRZZZ', 3, '2012-06-12T06:00:00Z'],
      ['CCCC1', 'PPDRZZZ', 0.3, '2012-06-12T06:00:00Z'],
    ])
    expect(problems('.B FTW 20120612 Z/PP', 'AAAA1 0.1/0.2', '.END')).toEqual([
      ['SHEF_TOO_MANY_VALUES', 2, 11, 'refused'],
    ])
  })
})

describe('of several values for one station, code and time', () => {
  it('the first is kept and the other is told, but a revision replaces it [SHEF2012] 5.1.4', () => {
    const first = '.A ABCD1 20120612 C DH07/PP 0.83'
    expect(problems(first, '.A ABCD1 20120612 C DH07/PP 0.38')).toEqual([['SHEF_TWICE', 2, 29, 'refused']])
    const { values, problems: none } = decode(first, '.AR ABCD1 20120612 C DH07/PP 0.38')
    expect(none).toEqual([])
    expect(settledShef(values).map(({ datum }) => datum)).toEqual([{ kind: 'number', value: 0.38, text: '0.38' }])
  })

  it('a missing one gives way to a value, and takes its place only as a revision [SHEF2012] 5.1.6', () => {
    const settled = (...lines: string[]) => settledShef(decode(...lines).values).map(({ datum }) => datum.kind)
    const [missing, value] = ['.A ABCD1 20120612 Z/PP M', '.A ABCD1 20120612 Z/PP 0.4']
    expect(settled(missing, value)).toEqual(['number'])
    expect(settled(value, missing)).toEqual(['number'])
    expect(settled(value, missing.replace('.A', '.AR'))).toEqual(['missing'])
  })
})
