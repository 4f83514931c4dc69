/**
 * Gauges and readings straight from files, without a ledger: what `check` and `expect` work on. A long table (gauge, day,
 * amount) or a wide one (day, then a column per gauge), plain or gzip, becomes one dense DailyTable.
 */
import { type DailyTable, type EpochDay, emptyDailyTable, isoFromEpochDay, type Unit } from '@gaugewright/science'
import type { Answer } from '../ports/answer.ts'
import type { ReadingsAsk } from '../ports/intakeFiles.ts'
import { IntakeRefusal } from '../ports/intakeRefusal.ts'
import { type GaugeFileOptions, readGaugeRows } from './gaugeRows.ts'
import { openReadingFile, readingTwice } from './readingRows.ts'
import { guarded, placeText } from './refusal.ts'

/** n gauges (or points), in the order of the file. `latDeg` and `lonDeg`, or `xM` and `yM`, are NaN where not given. */
export interface GaugesTable {
  gaugeIds: string[]
  plane: 'degrees' | 'metres'
  latDeg: Float64Array
  lonDeg: Float64Array
  xM: Float64Array
  yM: Float64Array
  /** NaN where the file gives none. */
  elevationM: Float64Array
  names: string[]
}

export interface ReadingsTable {
  /** Column g of the table is gaugeIds[g]: those asked for, in that order, or else those of the file. */
  gaugeIds: readonly string[]
  table: DailyTable
  readingCount: number
  /** Gauges of the file that were not asked for; their readings are not in the table. */
  leftOut: string[]
}

export interface ReadingsTableOptions
  extends Pick<ReadingsAsk, 'encoding' | 'delimiter' | 'columns' | 'dayFormat' | 'decimal' | 'missing' | 'onProgress'> {
  unit: Unit
  /** The gauges wanted, usually `GaugesTable.gaugeIds`. */
  gaugeIds?: readonly string[] | undefined
  fromDay?: EpochDay | undefined
  toDay?: EpochDay | undefined
}

/** 14 bytes a cell: 2 GB at most. */
const MAX_CELLS = 150_000_000

/** Read GAUGES.csv; for POINTS.csv give `{ idNames: ['point'] }`. */
export function readGaugesFile(path: string, options: GaugeFileOptions = {}): Promise<Answer<GaugesTable>> {
  return guarded(async () => {
    const { plane, rows } = await readGaugeRows(path, options)
    if (rows.length === 0) {
      throw new IntakeRefusal(
        'FILE_EMPTY',
        `${placeText({ path })} has a header and no rows.`,
        'Give at least one gauge.',
      )
    }
    const east = Float64Array.from(rows, (row) => row.east)
    const north = Float64Array.from(rows, (row) => row.north)
    const none = () => new Float64Array(rows.length).fill(Number.NaN)
    const isDegrees = plane === 'degrees'
    return {
      gaugeIds: rows.map((row) => row.id),
      plane,
      latDeg: isDegrees ? north : none(),
      lonDeg: isDegrees ? east : none(),
      xM: isDegrees ? none() : east,
      yM: isDegrees ? none() : north,
      elevationM: Float64Array.from(rows, (row) => row.elevationM ?? Number.NaN),
      names: rows.map((row) => row.name),
    }
  })
}

/** Read READINGS.csv[.gz]. The table runs from the first to the last day that has a reading (within the days asked for). */
export function readReadingsFile(path: string, options: ReadingsTableOptions): Promise<Answer<ReadingsTable>> {
  return guarded(async () => {
    const wanted = options.gaugeIds
    const gaugeIds = wanted === undefined ? [] : [...wanted]
    const indexOf = new Map(gaugeIds.map((id, index) => [id, index]))
    const leftOut = new Set<string>()
    const gaugeIndex = (id: string): number => {
      const known = indexOf.get(id)
      if (known !== undefined) return known
      if (wanted !== undefined) {
        leftOut.add(id)
        return -1
      }
      indexOf.set(id, gaugeIds.length)
      return gaugeIds.push(id) - 1
    }
    const { rows } = await openReadingFile(path, { ...options, gaugeIndex })
    const column = new ReadingColumn()
    const { fromDay = Number.NEGATIVE_INFINITY, toDay = Number.POSITIVE_INFINITY } = options
    for await (const block of rows) {
      for (const row of block) if (row.lastDay >= fromDay && row.lastDay <= toDay) column.push(row)
    }
    if (column.length === 0) throw noReadings(path, leftOut, wanted !== undefined, options)
    return { gaugeIds, table: tableFrom(path, column, gaugeIds), readingCount: column.length, leftOut: [...leftOut] }
  })
}

/** Readings as parallel columns that grow: 25 bytes a reading. */
class ReadingColumn {
  length = 0
  gauge = new Int32Array(1 << 14)
  day = new Int32Array(1 << 14)
  span = new Uint8Array(1 << 14)
  line = new Int32Array(1 << 14)
  /** Micrometres; -1 for a trace. */
  amountUm = new Float64Array(1 << 14)

  push(row: {
    gauge: number
    firstDay: number
    lastDay: number
    amountUm: number
    isTrace: boolean
    line: number
  }): void {
    if (this.length === this.gauge.length) this.#grow()
    const index = this.length++
    this.gauge[index] = row.gauge
    this.day[index] = row.lastDay
    this.span[index] = row.lastDay - row.firstDay + 1
    this.line[index] = row.line
    this.amountUm[index] = row.isTrace ? -1 : row.amountUm
  }

  #grow(): void {
    const size = this.gauge.length * 2
    const grown = <T extends Int32Array | Uint8Array | Float64Array>(from: T, to: T): T => {
      to.set(from)
      return to
    }
    this.gauge = grown(this.gauge, new Int32Array(size))
    this.day = grown(this.day, new Int32Array(size))
    this.span = grown(this.span, new Uint8Array(size))
    this.line = grown(this.line, new Int32Array(size))
    this.amountUm = grown(this.amountUm, new Float64Array(size))
  }
}

function tableFrom(path: string, column: ReadingColumn, gaugeIds: readonly string[]): DailyTable {
  let first = column.day[0] ?? 0
  let last = first
  for (let index = 1; index < column.length; index++) {
    const day = column.day[index] ?? 0
    if (day < first) first = day
    if (day > last) last = day
  }
  const dayCount = last - first + 1
  if (gaugeIds.length * dayCount > MAX_CELLS) {
    throw new IntakeRefusal(
      'TABLE_TOO_LARGE',
      `${placeText({ path })} spans ${isoFromEpochDay(first)} to ${isoFromEpochDay(last)} at ${gaugeIds.length} gauges, which is more than fits in memory.`,
      'Check for a mistyped year, or take part of it with --from and --to.',
    )
  }
  const table = emptyDailyTable(gaugeIds.length, first, dayCount)
  for (let index = 0; index < column.length; index++) {
    const gauge = column.gauge[index] ?? 0
    const day = column.day[index] ?? 0
    const cell = (day - first) * gaugeIds.length + gauge
    const um = column.amountUm[index] ?? 0
    const isTrace = um < 0 ? 1 : 0
    const mm = isTrace ? 0 : um / 1000
    const span = column.span[index] ?? 1
    if (table.spanDays[cell] !== 0) {
      const isSame = table.amountMm[cell] === mm && table.isTrace[cell] === isTrace && table.spanDays[cell] === span
      if (!isSame) throw twin(path, column.line[index] ?? 0, gaugeIds[gauge] ?? '', day, isTrace ? 'T' : String(mm))
    }
    table.amountMm[cell] = mm
    table.isTrace[cell] = isTrace
    table.spanDays[cell] = span
  }
  return table
}

function twin(path: string, line: number, gaugeId: string, day: EpochDay, text: string): IntakeRefusal {
  return readingTwice({ path, line, field: `gauge ${gaugeId} on ${isoFromEpochDay(day)}` }, text)
}

function noReadings(
  path: string,
  leftOut: Set<string>,
  hasList: boolean,
  options: ReadingsTableOptions,
): IntakeRefusal {
  const { fromDay, toDay } = options
  if (hasList && leftOut.size > 0) {
    return new IntakeRefusal(
      'NO_READINGS',
      `${placeText({ path })} has no readings of the gauges asked for, only of others (${[...leftOut].slice(0, 3).join(', ')}${leftOut.size > 3 ? ' …' : ''}).`,
      'Check that both files use the same gauge codes.',
    )
  }
  const isRanged = fromDay !== undefined || toDay !== undefined
  return new IntakeRefusal(
    'NO_READINGS',
    `${placeText({ path })} has no readings${isRanged ? ' in the days asked for' : ''}.`,
    isRanged ? 'Check --from and --to.' : 'Check that it is the right file.',
  )
}
