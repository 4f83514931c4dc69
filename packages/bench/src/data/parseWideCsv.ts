/**
 * A wide table of daily amounts read straight from bytes: `date` and then one column per gauge, plain decimals in mm,
 * an empty cell where nothing was reported. Made for our own well-formed test files; the desk's import is elsewhere.
 */
import { type DailyTable, emptyDailyTable } from '@gaugewright/science'

const comma = 44
const lineFeed = 10
const carriageReturn = 13
const point = 46
const zero = 48

/**
 * @param bytes  the file, unpacked
 * @param ids    gauges in the wanted order; columns of the file are matched by name, gauges without a column stay NaN
 * @returns one row per calendar day from the first date to the last
 * @throws {Error} an unknown column, or a row whose cells are not plain decimals (names the row)
 */
export function parseWideCsv(bytes: Uint8Array, ids: readonly string[]): DailyTable {
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const headerEnd = bytes.indexOf(lineFeed)
  const header = text.toString('utf8', 0, headerEnd).trim().split(',')
  const place = new Map(ids.map((id, index) => [id, index]))
  const columns = Int32Array.from(header.slice(1), (id) => {
    const index = place.get(id)
    if (index === undefined) throw new Error(`column ${id} is not in the list of gauges`)
    return index
  })
  const firstDay = dayFromIso(text.toString('latin1', headerEnd + 1, headerEnd + 11))
  const lastRowAt = bytes.lastIndexOf(lineFeed, bytes.length - 2) + 1
  const lastDay = dayFromIso(text.toString('latin1', lastRowAt, lastRowAt + 10))
  const table = emptyDailyTable(ids.length, firstDay, lastDay - firstDay + 1)

  let at = headerEnd + 1
  while (at < bytes.length) {
    const day = dayFromIso(text.toString('latin1', at, at + 10))
    at += 10
    const rowStart = (day - firstDay) * ids.length
    for (let column = 0; column < columns.length; column++) {
      if (bytes[at] !== comma) throw new Error(`row of day ${day}: ${columns.length} cells wanted, ${column} found`)
      at++
      let digits = 0
      let scale = 1
      let afterPoint = false
      let any = false
      for (; at < bytes.length; at++) {
        const code = bytes[at]!
        if (code >= zero && code <= zero + 9) {
          digits = digits * 10 + code - zero
          if (afterPoint) scale *= 10
          any = true
        } else if (code === point && !afterPoint) afterPoint = true
        else break
      }
      if (any) {
        const cell = rowStart + columns[column]!
        table.amountMm[cell] = digits / scale
        table.spanDays[cell] = 1
      }
    }
    if (bytes[at] === carriageReturn) at++
    if (at < bytes.length && bytes[at] !== lineFeed) throw new Error(`row of day ${day}: unexpected text in a cell`)
    at++
  }
  return table
}

/** Whole days since 1970-01-01 of an ISO date such as `1984-01-04`. */
export function dayFromIso(iso: string): number {
  const day = Date.UTC(Number(iso.slice(0, 4)), Number(iso.slice(5, 7)) - 1, Number(iso.slice(8, 10))) / 86_400_000
  if (!Number.isInteger(day)) throw new Error(`"${iso}" is not an ISO date`)
  return day
}

/** ISO date of a whole day since 1970-01-01. */
export function isoFromDay(day: number): string {
  return new Date(day * 86_400_000).toISOString().slice(0, 10)
}
