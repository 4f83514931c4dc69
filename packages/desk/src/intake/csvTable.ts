/** A CSV file as a header and a stream of its rows: finds the delimiter, names the columns, checks the width of rows. */

import type { CsvAsk } from '../ports/intakeFiles.ts'
import { IntakeRefusal } from '../ports/intakeRefusal.ts'
import { type CsvRow, CsvSplitter } from './csvSplitter.ts'
import { placeText, quoted } from './refusal.ts'
import { textBlocks } from './textBlocks.ts'

export interface CsvTable {
  path: string
  delimiter: string
  /** Names as they stand in the file, trimmed. */
  header: string[]
  /** Rows after the header, a block of the file at a time. */
  blocks: AsyncGenerator<CsvRow[]>
}

/** @throws {IntakeRefusal} all codes of textBlocks, CSV_QUOTE_OPEN; COLUMN_TWICE where two columns share a name */
export async function openCsvTable(path: string, options: CsvAsk = {}): Promise<CsvTable> {
  const texts = textBlocks(path, options)
  let head = ''
  for (;;) {
    const { done, value } = await texts.next()
    if (done) break
    head += value
    if (/[^\r\n][\r\n]/.test(head)) break
  }
  head = head.replace(/^[\r\n]+/, (breaks) => breaks.replaceAll('\r', ''))
  const delimiter = options.delimiter ?? delimiterOf(head)
  const splitter = new CsvSplitter(path, delimiter)
  const first = splitter.push(head)
  while (first.length === 0) {
    const { done, value } = await texts.next()
    if (done) {
      first.push(...splitter.end())
      break
    }
    first.push(...splitter.push(value))
  }
  const header = (first.shift()?.fields ?? []).map((name) => name.trim())
  refuseTwins(path, header)
  return { path, delimiter, header, blocks: rowBlocks(splitter, first, texts) }
}

async function* rowBlocks(
  splitter: CsvSplitter,
  first: CsvRow[],
  texts: AsyncGenerator<string>,
): AsyncGenerator<CsvRow[]> {
  if (first.length > 0) yield first
  for await (const text of texts) {
    const rows = splitter.push(text)
    if (rows.length > 0) yield rows
  }
  const rest = splitter.end()
  if (rest.length > 0) yield rest
}

/** The one of comma, semicolon and tab that stands most often in the first line outside quotes; comma when none does. */
export function delimiterOf(text: string): string {
  const line = /^[^\r\n]*/.exec(text)?.[0].replace(/"[^"]*"/g, '') ?? ''
  let best = ','
  let bestCount = 0
  for (const candidate of [',', ';', '\t']) {
    const count = line.split(candidate).length - 1
    if (count > bestCount) [best, bestCount] = [candidate, count]
  }
  return best
}

function refuseTwins(path: string, header: string[]): void {
  const seen = new Set<string>()
  for (const name of header) {
    if (name !== '' && seen.has(name)) {
      throw new IntakeRefusal(
        'COLUMN_TWICE',
        `${placeText({ path, line: 1 })} has two columns named ${quoted(name)}.`,
        'Rename or remove one of them.',
      )
    }
    seen.add(name)
  }
}

/** @throws {IntakeRefusal} CSV_TOO_MANY_FIELDS, CSV_TOO_FEW_FIELDS */
export function refuseWrongWidth(table: CsvTable, row: CsvRow, neededCount: number): void {
  const { fields } = row
  if (fields.length > table.header.length) {
    const extra = fields.slice(table.header.length).find((field) => field.trim() !== '')
    if (extra !== undefined) {
      throw new IntakeRefusal(
        'CSV_TOO_MANY_FIELDS',
        `${placeText({ path: table.path, line: row.line })}: found ${fields.length} fields (the last ${quoted(fields.at(-1) ?? '')}), wanted the ${table.header.length} of the header.`,
        'If a comma is a decimal mark, put the amount in quotes and use --decimal comma, or separate the columns by semicolons.',
      )
    }
  }
  if (fields.length < neededCount) {
    throw new IntakeRefusal(
      'CSV_TOO_FEW_FIELDS',
      `${placeText({ path: table.path, line: row.line })}: found ${fields.length} fields, wanted at least ${neededCount}.`,
      'The line may be cut off; complete it.',
    )
  }
}
