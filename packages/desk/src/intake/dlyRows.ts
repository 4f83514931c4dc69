/**
 * The precipitation of a GHCN-Daily `.dly` file as readings. PRCP is a day's amount; MDPR with DAPR is a total over DAPR
 * days; both in tenths of a millimetre. Measurement flag T is a trace; P (missing, presumed zero) is silence and no
 * reading. A total without its number of days is passed over, since its interval is not known. Other elements are left
 * alone. Source: the GHCN-Daily readme [Menne2012].
 */
import { type EpochDay, hundredthInchUmFromTenthsMm, isoFromEpochDay, umFromTenthsMm } from '@gaugewright/science'
import type { DlyAsk, ReadingRow, ReadingStream } from '../ports/intakeFiles.ts'
import { IntakeRefusal } from '../ports/intakeRefusal.ts'
import { DLY_LINE_LENGTH, type DlyLine, type DlyValue, dlyColumn, dlyLine, dlyValue } from './dlyLine.ts'
import { givenTwice, MAX_SPAN_DAYS, readingTwice } from './readingRows.ts'
import { placed } from './refusal.ts'
import { type TextLine, textLines } from './textLines.ts'

const passed = {
  presumedZero: 'missing, presumed zero (flag P)',
  flagged: 'flagged by the archive',
  withoutDays: 'totals without a number of days',
  givenTwice,
} as const

/** Totals of one station, until all of its lines have been seen: their amounts and days stand on different lines. */
interface Totals {
  gauge: number
  amounts: Map<EpochDay, { line: TextLine; dayOfMonth: number; value: DlyValue }>
  dayCounts: Map<EpochDay, number>
}

export function openDlyFile(path: string, ask: DlyAsk): ReadingStream {
  const passedOver: Record<string, number> = {}
  return { header: null, delimiter: ' ', rows: dlyBlocks(new DlyReader(path, ask, passedOver)), passedOver }
}

async function* dlyBlocks(reader: DlyReader): AsyncGenerator<ReadingRow[]> {
  for await (const lines of textLines(reader.path, reader.ask)) {
    const rows: ReadingRow[] = []
    for (const line of lines) reader.read(line, rows)
    if (rows.length > 0) yield rows
  }
  const last: ReadingRow[] = []
  reader.endStation(last)
  if (last.length > 0) yield last
}

class DlyReader {
  readonly path: string
  readonly ask: DlyAsk
  readonly #passedOver: Record<string, number>
  #station = ''
  #totals: Totals = { gauge: -1, amounts: new Map(), dayCounts: new Map() }

  constructor(path: string, ask: DlyAsk, passedOver: Record<string, number>) {
    this.path = path
    this.ask = ask
    this.#passedOver = passedOver
  }

  read(line: TextLine, rows: ReadingRow[]): void {
    if (line.text.trim() === '') return
    const refusedDays: number[] = []
    const reasons: string[] = []
    try {
      this.#readLine(line, rows, (dayOfMonth, refusal) => {
        refusedDays.push(dayOfMonth)
        reasons.push(refusal.problem.seen)
      })
    } catch (error) {
      if (!(error instanceof IntakeRefusal) || this.ask.onRefused === undefined) throw error
      this.ask.onRefused({ line: line.line, fields: [line.text.slice(0, DLY_LINE_LENGTH)], reason: error.problem.seen })
      return
    }
    if (reasons.length > 0) {
      this.ask.onRefused?.({ line: line.line, fields: [onlyDays(line.text, refusedDays)], reason: reasons.join(' ') })
    }
  }

  /** The totals of the station that is at its end. */
  endStation(rows: ReadingRow[]): void {
    const { gauge, amounts, dayCounts } = this.#totals
    for (const [lastDay, { line, dayOfMonth, value }] of amounts) {
      const dayCount = dayCounts.get(lastDay)
      if (dayCount === undefined || dayCount < 1 || dayCount > MAX_SPAN_DAYS) {
        this.#passOver('withoutDays')
        continue
      }
      try {
        this.#push(rows, line.line, gauge, lastDay - dayCount + 1, lastDay, value)
      } catch (error) {
        if (!(error instanceof IntakeRefusal) || this.ask.onRefused === undefined) throw error
        const fields = [onlyDays(line.text, [dayOfMonth])]
        this.ask.onRefused({ line: line.line, fields, reason: error.problem.seen })
      }
    }
    this.#totals = { gauge: -1, amounts: new Map(), dayCounts: new Map() }
  }

  #readLine(line: TextLine, rows: ReadingRow[], onRefused: (dayOfMonth: number, refusal: IntakeRefusal) => void): void {
    const parts = dlyLine(this.path, line)
    const { element, station } = parts
    if (element !== 'PRCP' && element !== 'MDPR' && element !== 'DAPR') return
    if (station !== this.#station) {
      this.endStation(rows)
      this.#station = station
    }
    const gauge = this.ask.gaugeIndex(station)
    if (gauge === null) {
      throw new IntakeRefusal(
        'GAUGE_UNKNOWN',
        placed({ path: this.path, line: line.line, field: 'station' }, station, 'a known gauge'),
        'Give the list of stations with --stations, or import the gauge first.',
      )
    }
    if (gauge < 0) return
    this.#totals.gauge = gauge
    for (let dayOfMonth = 1; dayOfMonth <= 31; dayOfMonth++) {
      try {
        const value = dlyValue(this.path, line, dayOfMonth)
        if (value !== null) this.#take(line, parts, gauge, dayOfMonth, value, rows)
      } catch (error) {
        if (!(error instanceof IntakeRefusal) || this.ask.onRefused === undefined) throw error
        onRefused(dayOfMonth, error)
      }
    }
  }

  #take(line: TextLine, parts: DlyLine, gauge: number, dayOfMonth: number, value: DlyValue, rows: ReadingRow[]): void {
    const day = parts.firstDay + dayOfMonth - 1
    const columns = `columns ${dlyColumn(dayOfMonth) + 1}-${dlyColumn(dayOfMonth) + 5}`
    const refuse = (code: 'DLY_LAYOUT' | 'DAY_NOT_VALID' | 'AMOUNT_NEGATIVE', wanted: string): never => {
      const place = { path: this.path, line: line.line, field: columns }
      throw new IntakeRefusal(code, placed(place, String(value.value), wanted), 'Mend the value, or make it -9999.')
    }
    if (dayOfMonth > parts.dayCount) refuse('DLY_LAYOUT', '-9999, as the month has no such day')
    if (value.value < 0) refuse('AMOUNT_NEGATIVE', '0 or more, or -9999')
    const { latestDay } = this.ask
    if (latestDay !== undefined && day > latestDay) {
      refuse('DAY_NOT_VALID', `-9999, as ${isoFromEpochDay(day)} has not come yet`)
    }
    if (parts.element === 'DAPR') this.#totals.dayCounts.set(day, value.value)
    else if (parts.element === 'MDPR') this.#totals.amounts.set(day, { line, dayOfMonth, value })
    else this.#push(rows, line.line, gauge, day, day, value)
  }

  #push(rows: ReadingRow[], line: number, gauge: number, firstDay: EpochDay, lastDay: EpochDay, value: DlyValue): void {
    const isFlagged = value.qualityFlag !== '' && this.ask.flagged === 'leave-out'
    if (value.measurementFlag === 'P' || isFlagged) {
      this.#passOver(isFlagged ? 'flagged' : 'presumedZero')
      return
    }
    const isTrace = value.measurementFlag === 'T'
    const inchesUm = this.ask.wereInches ? hundredthInchUmFromTenthsMm(value.value) : null
    const amountUm = isTrace ? 0 : (inchesUm ?? umFromTenthsMm(value.value))
    const text = isTrace ? 'T' : (value.value / 10).toFixed(1)
    const noted = this.ask.note?.(gauge, lastDay, lastDay - firstDay + 1, amountUm, isTrace) ?? 'new'
    if (noted === 'other') throw readingTwice({ path: this.path, line, field: isoFromEpochDay(lastDay) }, text)
    if (noted === 'same') {
      this.#passOver('givenTwice')
      return
    }
    const flags = [
      value.measurementFlag === '' || isTrace ? '' : `measurement flag ${value.measurementFlag}`,
      value.qualityFlag === '' ? '' : `quality flag ${value.qualityFlag}`,
    ].filter(Boolean)
    rows.push({
      line,
      gauge,
      firstDay,
      lastDay,
      amountUm,
      isTrace,
      unit: 'mm',
      text,
      remark: flags.length === 0 ? null : `archive: ${flags.join(', ')}`,
    })
  }

  #passOver(why: keyof typeof passed): void {
    this.#passedOver[passed[why]] = (this.#passedOver[passed[why]] ?? 0) + 1
  }
}

/** The line with every day missing but those given, so that it can be mended and given back. */
function onlyDays(text: string, days: readonly number[]): string {
  let result = text.slice(0, dlyColumn(1))
  for (let day = 1; day <= 31; day++) {
    const from = dlyColumn(day)
    result += days.includes(day) ? text.slice(from, from + 8).padEnd(8) : '-9999   '
  }
  return result
}
