/** What a file holds, told by its first line: fixed columns, or the header of a table. */
import type { CsvAsk, FileKind } from '../ports/intakeFiles.ts'
import { IntakeRefusal } from '../ports/intakeRefusal.ts'
import { openCsvTable } from './csvTable.ts'
import { namedColumn } from './readingLayout.ts'
import { placeText, quoted } from './refusal.ts'
import { shefPattern } from './shefRows.ts'
import { stationPattern } from './stationRows.ts'
import { textBlocks } from './textBlocks.ts'

/** @throws {IntakeRefusal} as textBlocks; FILE_KIND_UNCLEAR */
export async function fileKind(path: string, ask: CsvAsk): Promise<FileKind> {
  const texts = textBlocks(path, { encoding: ask.encoding })
  const start = (await texts.next()).value ?? ''
  await texts.return(undefined)
  if (/^[A-Z]{2}[A-Z0-9_-]{9}\d{6}[A-Z0-9]{4}[ \d-]{5}/.test(start)) return 'dly'
  if (shefPattern.test(start)) return 'shef'
  if (stationPattern.test(start)) return 'stations'
  const table = await openCsvTable(path, { encoding: ask.encoding, delimiter: ask.delimiter })
  await table.blocks.return(undefined)
  const has = (field: string, ...names: string[]): boolean =>
    ask.columns?.[field] !== undefined || namedColumn(table.header, [field, ...names]) >= 0
  if (has('day', 'date')) return 'readings'
  if ((has('lat') && has('lon')) || (has('x_m') && has('y_m'))) return 'gauges'
  throw new IntakeRefusal(
    'FILE_KIND_UNCLEAR',
    `${placeText({ path, line: 1 })}: found ${quoted(table.header.join(table.delimiter))}, wanted the header of gauges (gauge,lat,lon,elev_m) or of readings (gauge,day,amount), or SHEF.`,
    'Say which columns are which, for example --column day=NAME, or what the file holds with --kind.',
  )
}
