import { type EpochDay, type ObservingDays, parseInstant, type Unit, usualWindow } from '@gaugewright/science'
import type { IntakeFiles, ReadingStream, RefusedRow, RowsAsk } from '../../ports/intakeFiles.ts'
import type { NetworkSettings } from '../../ports/ledger.ts'
import type { GaugeBook } from './gaugeBook.ts'
import type { ImportAsk } from './importAsk.ts'
import type { SeenReadings } from './seenReadings.ts'

/** Open a file of readings with what the user said about it. */
export async function openReadingStream(
  files: Pick<IntakeFiles, 'openReadings' | 'openDly' | 'openShef'>,
  kind: 'readings' | 'dly' | 'shef',
  of: {
    path: string
    unit: Unit
    ask: ImportAsk
    book: GaugeBook
    seen: SeenReadings
    latestDay: EpochDay
    onRefused: ((row: RefusedRow) => void) | undefined
    days: ObservingDays
    network: Pick<NetworkSettings, 'acceptWindowMin'>
    receivedAtUtc: string
  },
): Promise<ReadingStream> {
  const { ask, path } = of
  const rowsAsk: RowsAsk = {
    latestDay: of.latestDay,
    gaugeIndex: (code) => ownIndex(of.book, code, ask.onlyGaugeIds),
    note: (gauge, lastDay, spanDays, amountUm, isTrace) => of.seen.note(gauge, lastDay, spanDays, amountUm, isTrace),
    onRefused: of.onRefused,
  }
  const textAsk = {
    encoding: ask.encoding,
    onProgress: (done: number, total: number) => ask.onProgress?.(path, done, total),
  }
  if (kind === 'dly') {
    return await files.openDly(path, { ...rowsAsk, ...textAsk, flagged: ask.flagged, wereInches: ask.wereInches })
  }
  if (kind === 'shef') {
    const { acceptWindowMin } = of.network
    const window = { ...usualWindow, beforeMin: acceptWindowMin, afterMin: acceptWindowMin }
    const nowUtcMs = parseInstant(of.receivedAtUtc) ?? 0
    return await files.openShef(path, { ...rowsAsk, ...textAsk, days: of.days, window, nowUtcMs })
  }
  return await files.openReadings(path, {
    ...rowsAsk,
    ...textAsk,
    unit: of.unit,
    columns: ask.columns,
    delimiter: ask.delimiter,
    dayFormat: ask.dayFormat,
    decimal: ask.decimal,
    missing: ask.missing,
  })
}

/** A gauge of somebody else is told apart from an unknown one by nobody. */
function ownIndex(book: GaugeBook, code: string, only: ReadonlySet<string> | undefined): number | null {
  const index = book.indexOf(code)
  return index === null || only === undefined || only.has(book.ids[index] ?? '') ? index : null
}
