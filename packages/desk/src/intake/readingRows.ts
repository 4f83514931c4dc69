/**
 * The readings of a CSV file as a stream, each checked by itself: a known gauge, a real day, an amount. Twins within the
 * file and what the ledger already holds are not looked at here (seenReadings.ts, importFiles.ts).
 */
import type { EpochDay, Unit } from '@gaugewright/science'
import { readAmountText } from './amountText.ts'
import type { CsvRow } from './csvSplitter.ts'
import { type CsvOptions, type CsvTable, openCsvTable, refuseWrongWidth } from './csvTable.ts'
import { type DayFormat, dayFormatWords, readDay } from './dayText.ts'
import { type ReadingColumns, type ReadingLayout, readingLayout } from './readingLayout.ts'
import { IntakeRefusal, type Place, placed, placeText } from './refusal.ts'

/** Days that one total may cover: as many as DailyTable can say. */
export const MAX_SPAN_DAYS = 255

export interface ReadingRow {
  line: number
  /** What `gaugeIndex` answered. */
  gauge: number
  firstDay: EpochDay
  lastDay: EpochDay
  amountUm: number
  isTrace: boolean
  /** The amount as it stands in the file. */
  text: string
  remark: string | null
}

/** A row that was not taken, with only the fields to blame filled in where the table is wide. */
export interface RefusedRow {
  line: number
  fields: string[]
  reason: string
}

export interface ReadingFileOptions extends CsvOptions {
  unit: Unit
  columns?: ReadingColumns | undefined
  dayFormat?: DayFormat | undefined
  decimal?: 'point' | 'comma' | undefined
  /** Texts that mean "no reading", beside nothing at all; for example `-9999`. */
  missing?: readonly string[] | undefined
  /** Days after this one are refused. */
  latestDay?: EpochDay | undefined
  /** Index of a gauge, or -1 to pass over its readings, or null when a reading of such a gauge is to be refused. */
  gaugeIndex: (id: string) => number | null
  /** Given: refused rows go here and the others are taken. Left out: the first refused row ends the reading. */
  onRefused?: ((row: RefusedRow) => void) | undefined
}

export interface ReadingFile {
  table: CsvTable
  layout: ReadingLayout
  rows: AsyncGenerator<ReadingRow[]>
}

/** @throws {IntakeRefusal} as openCsvTable and readingLayout; while rows are drawn, every code of a row */
export async function openReadingFile(path: string, options: ReadingFileOptions): Promise<ReadingFile> {
  const table = await openCsvTable(path, options)
  const layout = readingLayout(table, options.columns)
  const reader = new RowReader(table, layout, options)
  return { table, layout, rows: readingBlocks(table, reader) }
}

async function* readingBlocks(table: CsvTable, reader: RowReader): AsyncGenerator<ReadingRow[]> {
  for await (const block of table.blocks) {
    const readings: ReadingRow[] = []
    for (const row of block) reader.read(row, readings)
    if (readings.length > 0) yield readings
  }
}

class RowReader {
  readonly #table: CsvTable
  readonly #layout: ReadingLayout
  readonly #options: ReadingFileOptions
  readonly #missing: ReadonlySet<string>
  readonly #wideGauges: { id: string; column: number; gauge: number | null }[]
  #lastDayText = ''
  #lastDay: EpochDay = 0
  #lastGaugeId = ''
  #lastGauge: number | null = null

  constructor(table: CsvTable, layout: ReadingLayout, options: ReadingFileOptions) {
    this.#table = table
    this.#layout = layout
    this.#options = options
    this.#missing = new Set(['', ...(options.missing ?? [])])
    const columns = layout.kind === 'wide' ? layout.gauges : []
    this.#wideGauges = columns.map(({ id, column }) => ({ id, column, gauge: options.gaugeIndex(id) }))
  }

  read(row: CsvRow, readings: ReadingRow[]): void {
    const { onRefused } = this.#options
    if (onRefused === undefined) {
      this.#readRow(row, readings)
      return
    }
    try {
      this.#readRow(row, readings)
    } catch (error) {
      if (!(error instanceof IntakeRefusal)) throw error
      onRefused({ line: row.line, fields: row.fields, reason: error.problem.seen })
    }
  }

  #readRow(row: CsvRow, readings: ReadingRow[]): void {
    refuseWrongWidth(this.#table, row, this.#layout.neededCount)
    if (this.#layout.kind === 'wide') this.#readWide(row, readings)
    else this.#readLong(row, this.#layout, readings)
  }

  #readLong(row: CsvRow, layout: ReadingLayout & { kind: 'long' }, readings: ReadingRow[]): void {
    const { fields, line } = row
    const text = (fields[layout.amount] ?? '').trim()
    const id = (fields[layout.gauge] ?? '').trim()
    if (this.#missing.has(text)) return
    if (id !== this.#lastGaugeId || this.#lastGaugeId === '') {
      this.#lastGauge = id === '' ? null : this.#options.gaugeIndex(id)
      this.#lastGaugeId = id
    }
    const gauge = this.#lastGauge
    if (gauge === null) throw this.#unknownGauge(line, layout.gauge, id)
    if (gauge < 0) return
    const lastDay = this.#day(line, layout.day, fields[layout.day] ?? '')
    const firstDay = layout.firstDay < 0 ? lastDay : this.#firstDay(line, layout.firstDay, fields, lastDay)
    const { amountUm, isTrace } = this.#amount(line, layout.amount, text)
    const typed = layout.text < 0 ? '' : (fields[layout.text] ?? '')
    const remark = layout.remark < 0 ? '' : (fields[layout.remark] ?? '').trim()
    readings.push({
      line,
      gauge,
      firstDay,
      lastDay,
      amountUm,
      isTrace,
      text: typed === '' ? text : typed,
      remark: remark === '' ? null : remark,
    })
  }

  #readWide(row: CsvRow, readings: ReadingRow[]): void {
    const { fields, line } = row
    const { onRefused } = this.#options
    const day = this.#day(line, 0, fields[0] ?? '')
    let refusedFields: string[] | null = null
    const reasons: string[] = []
    for (const { id, column, gauge } of this.#wideGauges) {
      const field = fields[column] ?? ''
      if (field === '' || gauge === -1) continue
      const text = field.trim()
      if (this.#missing.has(text)) continue
      try {
        if (gauge === null) throw this.#unknownGauge(line, column, id)
        const { amountUm, isTrace } = this.#amount(line, column, text)
        readings.push({ line, gauge, firstDay: day, lastDay: day, amountUm, isTrace, text, remark: null })
      } catch (error) {
        if (onRefused === undefined || !(error instanceof IntakeRefusal)) throw error
        refusedFields ??= this.#table.header.map((_, index) => (index === 0 ? (fields[0] ?? '') : ''))
        refusedFields[column] = field
        reasons.push(error.problem.seen)
      }
    }
    if (refusedFields !== null) onRefused?.({ line, fields: refusedFields, reason: reasons.join(' ') })
  }

  #day(line: number, column: number, text: string): EpochDay {
    if (text === this.#lastDayText && text !== '') return this.#lastDay
    const format = this.#options.dayFormat ?? 'iso'
    const day = readDay(text.trim(), format)
    if (day === null) {
      throw new IntakeRefusal(
        'DAY_NOT_VALID',
        placed(this.#place(line, column), text.trim(), dayFormatWords[format]),
        format === 'iso'
          ? 'Mend the date, or name its order, for example --date-format d/m/y.'
          : 'Mend the date, or name another order with --date-format.',
      )
    }
    const { latestDay } = this.#options
    if (latestDay !== undefined && day > latestDay) {
      throw new IntakeRefusal(
        'DAY_NOT_VALID',
        placed(this.#place(line, column), text.trim(), 'a day that has already come'),
        'Mend the date.',
      )
    }
    this.#lastDayText = text
    this.#lastDay = day
    return day
  }

  #firstDay(line: number, column: number, fields: string[], lastDay: EpochDay): EpochDay {
    const text = (fields[column] ?? '').trim()
    if (text === '') return lastDay
    const format = this.#options.dayFormat ?? 'iso'
    const firstDay = readDay(text, format)
    if (firstDay !== null && firstDay <= lastDay && lastDay - firstDay < MAX_SPAN_DAYS) return firstDay
    throw new IntakeRefusal(
      firstDay === null ? 'DAY_NOT_VALID' : 'SPAN_NOT_VALID',
      placed(
        this.#place(line, column),
        text,
        firstDay === null
          ? dayFormatWords[format]
          : `a day on or up to ${MAX_SPAN_DAYS - 1} days before the last day of the total`,
      ),
      'Mend the date.',
    )
  }

  #amount(line: number, column: number, text: string): { amountUm: number; isTrace: boolean } {
    const { unit, decimal } = this.#options
    const answer = readAmountText(text, unit, decimal ?? 'point')
    if (answer.ok) return answer
    throw new IntakeRefusal(answer.code, placed(this.#place(line, column), text, answer.wanted), answer.advice)
  }

  #unknownGauge(line: number, column: number, id: string): IntakeRefusal {
    if (id === '') {
      return new IntakeRefusal(
        'GAUGE_EMPTY',
        placed(this.#place(line, column), '', 'the code of a gauge'),
        'Fill it in.',
      )
    }
    return new IntakeRefusal(
      'GAUGE_UNKNOWN',
      placed(this.#place(line, column), id, 'the code of a known gauge'),
      'Mend the code, or import that gauge first.',
    )
  }

  #place(line: number, column: number): Place {
    return { path: this.#table.path, line, field: this.#table.header[column] ?? `field ${column + 1}` }
  }
}

/** @throws {IntakeRefusal} READING_TWICE, always */
export function refuseTwin(path: string, line: number, gaugeId: string, day: string): never {
  throw new IntakeRefusal(
    'READING_TWICE',
    `${placeText({ path, line })}: gauge ${gaugeId} has another amount for ${day} on an earlier line.`,
    'Keep the right one of the two.',
  )
}
