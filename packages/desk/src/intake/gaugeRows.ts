/** The gauges of a CSV file, each checked by itself and against the others. Held whole: a line per gauge is little. */

import type { GaugeRow, GaugesAsk, GaugesOfFile } from '../ports/intakeFiles.ts'
import { IntakeRefusal } from '../ports/intakeRefusal.ts'
import type { CsvRow } from './csvSplitter.ts'
import { type CsvTable, openCsvTable, refuseWrongWidth } from './csvTable.ts'
import { mappedColumn, namedColumn } from './readingLayout.ts'
import { placed, placeText, quoted } from './refusal.ts'

export const gaugeFields = [
  'gauge',
  'lat',
  'lon',
  'x_m',
  'y_m',
  'elev_m',
  'name',
  'area',
  'observer',
  'resolution_mm',
] as const
export type GaugeField = (typeof gaugeFields)[number]

export interface GaugeFileOptions extends GaugesAsk {
  /** Names of the first column: `gauge` or `id`; a file of points has `point`. */
  idNames?: readonly string[] | undefined
}

type Columns = Record<GaugeField, number>

/** @throws {IntakeRefusal} as openCsvTable; COLUMN_MISSING, GAUGE_EMPTY, GAUGE_TWICE, POSITION_NOT_VALID, GAUGE_FIELD_NOT_VALID */
export async function readGaugeRows(path: string, options: GaugeFileOptions = {}): Promise<GaugesOfFile> {
  const table = await openCsvTable(path, options)
  options.onShape?.({ header: table.header, delimiter: table.delimiter })
  const columns = gaugeColumns(table, options)
  const plane = columns.lat >= 0 ? 'degrees' : 'metres'
  const needed = [columns.gauge, columns.lat, columns.lon, columns.x_m, columns.y_m]
  const neededCount = Math.max(...needed) + 1
  const lineOf = new Map<string, number>()
  const rows: GaugeRow[] = []
  for await (const block of table.blocks) {
    for (const row of block) {
      try {
        refuseWrongWidth(table, row, neededCount)
        const gauge = gaugeFrom(table, columns, plane, row)
        const earlier = lineOf.get(gauge.id)
        if (earlier !== undefined) {
          throw new IntakeRefusal(
            'GAUGE_TWICE',
            `${placeText({ path, line: row.line })}: gauge ${quoted(gauge.id)} stands on line ${earlier} already.`,
            'Keep one line per gauge.',
          )
        }
        lineOf.set(gauge.id, row.line)
        rows.push(gauge)
      } catch (error) {
        if (options.onRefused === undefined || !(error instanceof IntakeRefusal)) throw error
        options.onRefused({ line: row.line, fields: row.fields, reason: error.problem.seen })
      }
    }
  }
  return { header: table.header, delimiter: table.delimiter, plane, rows }
}

function gaugeColumns(table: CsvTable, options: GaugeFileOptions): Columns {
  const idNames = options.idNames ?? ['gauge', 'id']
  const columns = Object.fromEntries(
    gaugeFields.map((field) => {
      const mapped = options.columns?.[field]
      if (mapped !== undefined) return [field, mappedColumn(table, field, mapped)]
      return [field, namedColumn(table.header, field === 'gauge' ? idNames : [field])]
    }),
  ) as Columns
  const hasDegrees = columns.lat >= 0 && columns.lon >= 0
  const hasMetres = columns.x_m >= 0 && columns.y_m >= 0
  if (columns.gauge >= 0 && (hasDegrees || hasMetres)) return hasDegrees ? columns : { ...columns, lat: -1, lon: -1 }
  const id = idNames[0] ?? 'gauge'
  throw new IntakeRefusal(
    'COLUMN_MISSING',
    `${placeText({ path: table.path, line: 1 })}: found the columns ${quoted(table.header.join(table.delimiter))}, wanted ${id},lat,lon,elev_m or ${id},x_m,y_m,elev_m.`,
    `Rename the columns, or say which is which, for example --column lat=NAME.`,
  )
}

function gaugeFrom(table: CsvTable, columns: Columns, plane: 'degrees' | 'metres', row: CsvRow): GaugeRow {
  const textOf = (field: GaugeField): string => (columns[field] < 0 ? '' : (row.fields[columns[field]] ?? '').trim())
  const placeOf = (field: GaugeField) => ({
    path: table.path,
    line: row.line,
    field: table.header[columns[field]] ?? field,
  })
  const id = textOf('gauge')
  if (id === '')
    throw new IntakeRefusal('GAUGE_EMPTY', placed(placeOf('gauge'), '', 'the code of a gauge'), 'Fill it in.')

  const position = (field: GaugeField, limit: number, wanted: string): number => {
    const value = numberFrom(textOf(field))
    if (value !== null && Math.abs(value) <= limit) return value
    throw new IntakeRefusal('POSITION_NOT_VALID', placed(placeOf(field), textOf(field), wanted), 'Mend the position.')
  }
  const optional = (field: GaugeField, low: number, high: number, wanted: string): number | null => {
    const text = textOf(field)
    if (text === '') return null
    const value = numberFrom(text)
    if (value !== null && value >= low && value <= high) return value
    throw new IntakeRefusal('GAUGE_FIELD_NOT_VALID', placed(placeOf(field), text, wanted), 'Mend it or leave it empty.')
  }
  const metres = 'a distance on the plane in metres'
  return {
    line: row.line,
    id,
    east: plane === 'degrees' ? position('lon', 180, 'degrees east, -180 to 180') : position('x_m', 1e8, metres),
    north: plane === 'degrees' ? position('lat', 90, 'degrees north, -90 to 90') : position('y_m', 1e8, metres),
    elevationM: optional('elev_m', -500, 9000, 'metres above the sea, -500 to 9000, or nothing'),
    name: textOf('name'),
    area: textOf('area') || null,
    observer: textOf('observer') || null,
    resolutionMm: optional(
      'resolution_mm',
      0.001,
      10,
      'the smallest step of the gauge in mm, for instance 0.254, or nothing',
    ),
  }
}

/** A plain decimal number, sign allowed; null for anything else. */
function numberFrom(text: string): number | null {
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) ? Number(text) : null
}
