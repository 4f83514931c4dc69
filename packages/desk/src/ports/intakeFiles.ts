/** Files that people bring: gauges and readings from CSV, fixed-width archives and their station lists. */
import type { AcceptWindow, EpochDay, ObservingDays, Unit } from '@gaugewright/science'

export type FileKind = 'gauges' | 'readings' | 'dly' | 'shef' | 'stations'

export interface TextAsk {
  /** A label of the WHATWG Encoding standard, e.g. `windows-1252`; default UTF-8, or what the byte-order mark says. */
  encoding?: string | undefined
  /** Told the bytes of the file read so far and in all. */
  onProgress?: ((bytesRead: number, bytesTotal: number) => void) | undefined
}

export interface CsvAsk extends TextAsk {
  /** One character; found from the header when left out. */
  delimiter?: string | undefined
  /** Our word for a column, and the name it has in the file. */
  columns?: Readonly<Record<string, string>> | undefined
}

export const dayFormats = ['iso', 'yyyymmdd', 'd/m/y', 'm/d/y', 'y/m/d'] as const
/** In the formats with strokes, a point or a hyphen may stand for the stroke, and leading zeros may be left out. */
export type DayFormat = (typeof dayFormats)[number]

export interface RowsAsk {
  /** Days after this one are refused. */
  latestDay?: EpochDay | undefined
  /** Index of a gauge, or -1 to pass over its readings, or null when a reading of such a gauge is to be refused. */
  gaugeIndex: (id: string) => number | null
  /**
   * Told every reading in order. `same`: it was given before, and is passed over. `other`: it was given before with
   * another amount, and is refused.
   */
  note?: ((gauge: number, lastDay: EpochDay, spanDays: number, amountUm: number, isTrace: boolean) => Noted) | undefined
  /**
   * Given: refused rows go here and the others are taken. Left out: the first refused row ends the reading with an
   * IntakeRefusal.
   */
  onRefused?: ((row: RefusedRow) => void) | undefined
}

export type Noted = 'new' | 'same' | 'other'

export interface ReadingsAsk extends CsvAsk, RowsAsk {
  unit: Unit
  dayFormat?: DayFormat | undefined
  decimal?: 'point' | 'comma' | undefined
  /** Texts that mean "no reading", beside nothing at all; for example `-9999`. */
  missing?: readonly string[] | undefined
}

export interface DlyAsk extends TextAsk, RowsAsk {
  /** What becomes of readings that the archive's own checks have flagged. */
  flagged: 'keep' | 'leave-out'
  /** The tenths of a millimetre were hundredths of an inch: give those back where there are any. */
  wereInches: boolean
}

export interface ShefAsk extends TextAsk, RowsAsk {
  days: ObservingDays
  window: AcceptWindow
  /** From which a date without its year is the nearest. */
  nowUtcMs: number
}

/** One reading of a file, by itself in order. */
export interface ReadingRow {
  line: number
  /** What `gaugeIndex` answered. */
  gauge: number
  firstDay: EpochDay
  lastDay: EpochDay
  /** When the gauge was read, where the file says it; the end of the last day otherwise. */
  endsAtUtcMs?: number
  amountUm: number
  isTrace: boolean
  unit: Unit
  /** The amount as it stands in the file. */
  text: string
  remark: string | null
}

/** A row that was not taken, as fields of the file; where a row holds several readings, only those to blame are filled in. */
export interface RefusedRow {
  line: number
  fields: string[]
  reason: string
}

export interface FileShape {
  /** Null for fixed-width files and SHEF, whose rows are one field. */
  header: string[] | null
  delimiter: string
}

export interface GaugesAsk extends CsvAsk, Pick<RowsAsk, 'onRefused'> {
  /** Told the columns before the first row is read. */
  onShape?: ((shape: FileShape) => void) | undefined
}

export interface ReadingStream extends FileShape {
  /** Rejects with an IntakeRefusal. */
  rows: AsyncIterable<ReadingRow[]>
  /** How many values of the file were passed over on purpose, by what they were. Complete when the rows are drawn. */
  passedOver: Record<string, number>
}

export interface GaugeRow {
  line: number
  id: string
  /** Degrees, or metres on a plane. */
  east: number
  north: number
  elevationM: number | null
  name: string
  area: string | null
  observer: string | null
  resolutionMm: number | null
}

export interface GaugesOfFile extends FileShape {
  plane: 'degrees' | 'metres'
  rows: GaugeRow[]
}

/** Refused rows on their way into a file, which is made with the first of them. */
export interface RefusedOut {
  add: (row: RefusedRow) => void
  /** All rows are in the file, which still has a name of its own. @returns how many */
  finish: () => Promise<number>
  /** Give the file its name: when the rest of the delivery is kept. */
  place: () => Promise<void>
  /** Leave no file behind. */
  drop: () => Promise<void>
}

/** Every function rejects with an IntakeRefusal. */
export interface IntakeFiles {
  kindOf: (path: string, ask: CsvAsk) => Promise<FileKind>
  readGauges: (path: string, ask: GaugesAsk) => Promise<GaugesOfFile>
  openReadings: (path: string, ask: ReadingsAsk) => Promise<ReadingStream>
  openDly: (path: string, ask: DlyAsk) => Promise<ReadingStream>
  openShef: (path: string, ask: ShefAsk) => Promise<ReadingStream>
  readStations: (path: string, ask: TextAsk) => Promise<Map<string, GaugeRow>>
  refusedOut: (path: string, shape: () => FileShape) => RefusedOut
}
