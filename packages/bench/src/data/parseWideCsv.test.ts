import { describe, expect, it } from 'vitest'
import { dayFromIso, isoFromDay, parseWideCsv } from './parseWideCsv.ts'

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text)

describe('parseWideCsv', () => {
  it('puts each column at its gauge, whatever their order, and leaves gaps empty', () => {
    const table = parseWideCsv(bytes('date,B,A\n2003-02-28,0,12.45\n2003-03-01,,3\n'), ['A', 'B', 'C'])
    expect(table.firstDay).toBe(dayFromIso('2003-02-28'))
    expect([...table.amountMm]).toEqual([12.45, 0, Number.NaN, 3, Number.NaN, Number.NaN])
    expect([...table.spanDays]).toEqual([1, 1, 0, 1, 0, 0])
  })

  it('leaves a day that the file skips empty', () => {
    const table = parseWideCsv(bytes('date,A\r\n2004-02-28,1.5\r\n2004-03-01,2\r\n'), ['A'])
    expect([...table.amountMm]).toEqual([1.5, Number.NaN, 2])
  })

  it('refuses a column that it does not know, and a cell that is not a number', () => {
    expect(() => parseWideCsv(bytes('date,Z\n2003-01-01,0\n'), ['A'])).toThrow('column Z')
    expect(() => parseWideCsv(bytes('date,A\n2003-01-01,1x\n'), ['A'])).toThrow('unexpected text')
    expect(() => parseWideCsv(bytes('date,A,B\n2003-01-01,1\n'), ['A', 'B'])).toThrow('2 cells wanted, 1 found')
  })

  it('turns days into dates and back', () => {
    expect(isoFromDay(dayFromIso('1984-02-29'))).toBe('1984-02-29')
    expect(dayFromIso('1970-01-11')).toBe(10)
  })
})
