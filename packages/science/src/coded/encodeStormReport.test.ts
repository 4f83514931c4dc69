import { describe, expect, it } from 'vitest'
import { encodeStormBulletin, encodeStormReport } from './encodeStormReport.ts'
import { placeFromTown } from './placeFromTown.ts'
import type { StormReport } from './stormReport.ts'

/** The sample lines of [LSR], with invented names of the same lengths. */
const sample: StormReport = {
  happenedAtUtcMs: Date.UTC(2005, 3, 30, 2, 14),
  event: 'HAIL',
  magnitude: { value: 1, unit: 'INCH', how: 'M' },
  place: '2 SSE Sometown',
  latDeg: 33.6,
  lonDeg: -90.77,
  county: 'Somecounty',
  state: 'MS',
  source: 'Trained spotter',
  remark: 'Remark text from column 13.',
}
const office = { name: 'Weather desk Somewhere XX', timeZone: 'America/Chicago' }

describe('lines of a local storm report', () => {
  it('are those of the published sample, to the column [LSR]', () => {
    expect(encodeStormReport(sample, office).text).toBe(
      [
        '0914 PM     HAIL             2 SSE SOMETOWN          33.60N 90.77W',
        '04/29/2005  M1.00 INCH       SOMECOUNTY         MS   TRAINED SPOTTER',
        '',
        '            REMARK TEXT FROM COLUMN 13.',
        '',
      ].join('\n'),
    )
  })

  it('keep every field at the column of the published table', () => {
    const [first = '', second = ''] = encodeStormReport(sample, office).text.split('\n')
    expect(first.slice(0, 8)).toBe('0914 PM'.padEnd(8))
    expect(first.slice(12, 29).trimEnd()).toBe('HAIL')
    expect(first.slice(29, 53).trimEnd()).toBe('2 SSE SOMETOWN')
    expect(first.slice(53)).toBe('33.60N 90.77W')
    expect(second.slice(0, 10)).toBe('04/29/2005')
    expect(second.slice(12, 29).trimEnd()).toBe('M1.00 INCH')
    expect(second.slice(29, 48).trimEnd()).toBe('SOMECOUNTY')
    expect(second.slice(48, 50)).toBe('MS')
    expect(second.slice(53)).toBe('TRAINED SPOTTER')
  })

  it('name what was cut to fit, and keep the next field in its place', () => {
    const { text, cut } = encodeStormReport({ ...sample, place: '12 WNW Upper Cobblestone Crossing' }, office)
    expect(cut).toEqual(['place'])
    expect(text.split('\n')[0]?.slice(53)).toBe('33.60N 90.77W')
  })

  it('word midnight, noon, the south and the east', () => {
    const at = (utc: number) =>
      encodeStormReport({ ...sample, happenedAtUtcMs: utc, latDeg: -4.125, lonDeg: 7 }, office)
    expect(at(Date.UTC(2026, 5, 1, 5, 3)).text.slice(0, 7)).toBe('1203 AM')
    expect(at(Date.UTC(2026, 5, 1, 17, 4)).text.slice(0, 7)).toBe('1204 PM')
    expect(at(0).text.split('\n')[0]?.slice(53)).toBe('4.13S 7.00E')
  })

  it.each([
    [{ value: 60, unit: 'MPH', how: 'E' }, 'TSTM WND GST', 'E60 MPH'],
    [{ value: null, unit: 'INCH', how: 'M' }, 'SNOW', 'M  T INCH'],
    [{ value: 4, unit: 'INCH', how: 'M' }, 'HEAVY SNOW', 'M4.0 INCH'],
    [{ value: 1.75, unit: 'INCH', how: 'E' }, 'HAIL', 'E1.75 INCH'],
    [null, 'FLASH FLOOD', ''],
  ] as const)('write the magnitude %j of %s as "%s"', (magnitude, event, wanted) => {
    const line = encodeStormReport({ ...sample, magnitude, event }, office).text.split('\n')[1] ?? ''
    expect(line.slice(12, 29).trimEnd()).toBe(wanted)
  })

  it('wrap a long remark from column 13 and lose no word of it', () => {
    const remark = Array.from({ length: 40 }, (_, index) => `Wort${index}é`).join(' ')
    const lines = encodeStormReport({ ...sample, remark }, office)
      .text.trimEnd()
      .split('\n')
      .slice(3)
    expect(lines.every((line) => line.length <= 69 && line.startsWith(' '.repeat(12)) && line[12] !== ' ')).toBe(true)
    expect(lines.join(' ').split(/ +/).filter(Boolean)).toEqual(remark.replaceAll('é', 'e').toUpperCase().split(' '))
  })
})

describe('a bulletin', () => {
  it('has the frame of the published sample around its reports [LSR]', () => {
    const issued = { atUtcMs: Date.UTC(2014, 5, 6, 16, 27) }
    const words = { ...office, zoneWords: { standard: 'CST', daylight: 'CDT' } }
    const lines = encodeStormBulletin([sample], words, issued).text.split('\n')
    expect(lines.slice(0, 8)).toEqual([
      'PRELIMINARY LOCAL STORM REPORT',
      'WEATHER DESK SOMEWHERE XX',
      '1127 AM CDT FRI JUN 06 2014',
      '',
      '..TIME...   ...EVENT...      ...CITY LOCATION...     ...LAT.LON...',
      '..DATE...   ....MAG....      ..COUNTY LOCATION..ST.. ...SOURCE....',
      '            ..REMARKS..',
      '',
    ])
    expect(lines.slice(-6)).toEqual(['            REMARK TEXT FROM COLUMN 13.', '', '&&', '', '$$', ''])
  })
})

describe('a place from a town', () => {
  const towns = [
    { name: 'Alderholt', latDeg: 40, lonDeg: -100 },
    { name: 'Brackwater', latDeg: 41, lonDeg: -101 },
  ]

  it('is whole miles and one of 16 directions from the nearest', () => {
    // One arc minute of latitude is a nautical mile, 1.15 statute miles: 3 minutes south are 3.45 miles.
    expect(placeFromTown({ latDeg: 39.95, lonDeg: -100 }, towns)).toBe('3 S Alderholt')
    expect(placeFromTown({ latDeg: 41.05, lonDeg: -101.0663 }, towns)).toBe('5 NW Brackwater')
  })

  it('is the town itself within half a mile, and nothing where there is no town', () => {
    expect(placeFromTown({ latDeg: 40.001, lonDeg: -100 }, towns)).toBe('Alderholt')
    expect(placeFromTown({ latDeg: 40.001, lonDeg: -100 }, [])).toBeNull()
  })
})
