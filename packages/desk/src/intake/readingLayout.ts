/**
 * Which column of a readings file is what. Long: one row a reading (gauge, day, amount). Wide: one row a day, first the
 * day, then one column per gauge. Other columns are left alone. Names can be mapped by the user.
 */

import { IntakeRefusal } from '../ports/intakeRefusal.ts'
import type { CsvTable } from './csvTable.ts'
import { placeText, quoted } from './refusal.ts'

export const readingFields = ['gauge', 'day', 'amount', 'first_day', 'text', 'remark'] as const
export type ReadingField = (typeof readingFields)[number]

/** Names that are read as a field when the user has mapped nothing to it. */
const usualNames: Record<ReadingField, readonly string[]> = {
  gauge: ['gauge', 'id'],
  day: ['day', 'date'],
  amount: ['amount'],
  first_day: ['first_day'],
  text: ['text'],
  remark: ['remark'],
}

/** The column in which refused rows say why; an import leaves it alone, so that a mended file can be given back. */
export const REASON_COLUMN = 'refused_because'

export type ReadingLayout =
  | {
      kind: 'long'
      gauge: number
      day: number
      amount: number
      firstDay: number
      text: number
      remark: number
      neededCount: number
    }
  | { kind: 'wide'; day: number; gauges: { id: string; column: number }[]; neededCount: number }

/** @throws {IntakeRefusal} COLUMN_MISSING */
export function readingLayout(table: CsvTable, mapped: Readonly<Record<string, string>> = {}): ReadingLayout {
  const { header } = table
  const [gauge, day, amount, firstDay, text, remark] = readingFields.map((field) => columnOf(table, field, mapped)) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ]
  if (gauge >= 0 && day >= 0 && amount >= 0) {
    const neededCount = Math.max(gauge, day, amount) + 1
    return { kind: 'long', gauge, day, amount, firstDay, text, remark, neededCount }
  }
  if (gauge < 0 && amount < 0 && day === 0 && header.length > 1) {
    const gauges = header
      .map((id, column) => ({ id, column }))
      .filter(({ id, column }) => column > 0 && id !== '' && id !== REASON_COLUMN)
    return { kind: 'wide', day: 0, gauges, neededCount: (gauges.at(-1)?.column ?? 0) + 1 }
  }
  const missing = [gauge < 0 ? 'gauge' : '', day < 0 ? 'day' : '', amount < 0 ? 'amount' : ''].filter(Boolean)
  throw new IntakeRefusal(
    'COLUMN_MISSING',
    `${placeText({ path: table.path, line: 1 })} has no column ${missing.join(', ')}: found ${quoted(header.join(table.delimiter))}, wanted gauge,day,amount, or a wide table whose first column is day.`,
    `Rename the columns, or say which is which, for example --column ${missing[0] ?? 'day'}=NAME.`,
  )
}

/** Index of the column for a field, or -1. @throws {IntakeRefusal} COLUMN_MISSING where a mapped name is not there */
function columnOf(table: CsvTable, field: ReadingField, mapped: Readonly<Record<string, string>>): number {
  const name = mapped[field]
  if (name !== undefined) return mappedColumn(table, field, name)
  return namedColumn(table.header, usualNames[field])
}

/** @throws {IntakeRefusal} COLUMN_MISSING */
export function mappedColumn(table: CsvTable, field: string, name: string): number {
  const column = table.header.indexOf(name)
  if (column >= 0) return column
  throw new IntakeRefusal(
    'COLUMN_MISSING',
    `${placeText({ path: table.path, line: 1 })} has no column named ${quoted(name)}, which was to be read as ${field}: found ${quoted(table.header.join(table.delimiter))}.`,
    'Use a name that stands in the first line, in the same letters.',
  )
}

/** The first column with one of the names, in any case; -1 where there is none. */
export function namedColumn(header: readonly string[], names: readonly string[]): number {
  for (const name of names) {
    const column = header.findIndex((title) => title.toLowerCase() === name)
    if (column >= 0) return column
  }
  return -1
}
