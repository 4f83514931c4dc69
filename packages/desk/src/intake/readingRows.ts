/**
 * The readings of a CSV file as a stream, each checked by itself: a known gauge, a real day, an amount. Twins within the
 * file are found through `note`; what the ledger already holds is not looked at here.
 */
import type { EpochDay } from '@gaugewright/science'
import type { ReadingRow, ReadingStream, ReadingsAsk } from '../ports/intakeFiles.ts'
import { IntakeRefusal } from '../ports/intakeRefusal.ts'
import { type AmountOfFile, readAmountText } from './amountText.ts'
import type { CsvRow } from './csvSplitter.ts'
import { type CsvTable, openCsvTable, refuseWrongWidth } from './csvTable.ts'
import { dayFormatWords, earliestDay, readDay } from './dayText.ts'
import { type ReadingLayout, readingLayout } from './readingLayout.ts'
import { type Place, placed } from './refusal.ts'

/** Days that one total may cover: as many as DailyTable can say. */
export const MAX_SPAN_DAYS = 255

/** @throws {IntakeRefusal} as openCsvTable and readingLayout; while rows are drawn, every code of a row */
export async function openReadingFile(path: string, options: ReadingsAsk): Promise<ReadingStream> {
  const table = await openCsvTable(path, options)
  const layout = readingLayout(table, options.columns)
  const reader = new RowReader(table, layout, options)
  return {
    header: table.header,
    delimiter: table.delimiter,
    rows: readingBlocks(table, reader),
    passedOver: reader.passedOver,
  }
}

async function* readingBlocks(table: CsvTable, reader: RowReader): AsyncGenerator<ReadingRow[]> {
  for await (const block of table.blocks) {
    const readings: ReadingRow[] = []
    for (const row of block) reader.read(row, readings)
    if (readings.length > 0) yield readings
  }
}

class RowReader {
  readonly passedOver: Record<string, number> = {}
  readonly #table: CsvTable
  readonly #layout: ReadingLayout
  readonly #options: ReadingsAsk
  readonly #missing: ReadonlySet<string>
  readonly #wideGauges: { id: string; column: number; gauge: number | null }[]
  #lastDayText = ''
  #lastDay: EpochDay = 0
  #lastGaugeId = ''
  #lastGauge: number | null = null

  constructor(table: CsvTable, layout: ReadingLayout, options: ReadingsAsk) {
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
    const amount = this.#amount(line, layout.amount, text)
    if (amount === null || !this.#isNew(line, layout.amount, text, gauge, firstDay, lastDay, amount)) return
    const typed = layout.text < 0 ? '' : (fields[layout.text] ?? '')
    const remark = layout.remark < 0 ? '' : (fields[layout.remark] ?? '').trim()
    readings.push({
      line,
      gauge,
      firstDay,
      lastDay,
      ...amount,
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
        const amount = this.#amount(line, column, text)
        if (amount === null || !this.#isNew(line, column, text, gauge, day, day, amount)) continue
        readings.push({ line, gauge, firstDay: day, lastDay: day, ...amount, text, remark: null })
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
    if (day < earliestDay || (latestDay !== undefined && day > latestDay)) {
      throw new IntakeRefusal(
        'DAY_NOT_VALID',
        placed(
          this.#place(line, column),
          text.trim(),
          day < earliestDay ? 'a day since 1700' : 'a day that has already come',
        ),
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

  /** Null where the text is a word for no reading. */
  #amount(line: number, column: number, text: string): AmountOfFile | null {
    const { unit, decimal } = this.#options
    const answer = readAmountText(text, unit, decimal ?? 'point')
    if (answer.kind === 'amount') return { amountUm: answer.amountUm, isTrace: answer.isTrace, unit: answer.unit }
    if (answer.kind === 'missing') return null
    throw new IntakeRefusal(answer.code, placed(this.#place(line, column), text, answer.wanted), answer.advice)
  }

  /** False where the file gave the same before. @throws {IntakeRefusal} READING_TWICE where it gave another amount */
  #isNew(
    line: number,
    column: number,
    text: string,
    gauge: number,
    firstDay: EpochDay,
    lastDay: EpochDay,
    { amountUm, isTrace }: AmountOfFile,
  ): boolean {
    const noted = this.#options.note?.(gauge, lastDay, lastDay - firstDay + 1, amountUm, isTrace) ?? 'new'
    if (noted === 'other') throw readingTwice(this.#place(line, column), text)
    if (noted === 'same') this.passedOver[givenTwice] = (this.passedOver[givenTwice] ?? 0) + 1
    return noted === 'new'
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

/** What is counted when a file gives the same reading more than once. */
export const givenTwice = 'given more than once'

export function readingTwice(place: Place, text: string): IntakeRefusal {
  return new IntakeRefusal(
    'READING_TWICE',
    placed(place, text, 'the amount that stands for the same gauge and day on an earlier line'),
    'Keep the right one of the two.',
  )
}
