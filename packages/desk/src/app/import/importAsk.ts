import type { Unit } from '@gaugewright/science'
import type { Delivery } from '../../ports/deliveries.ts'
import type { DayFormat, FileKind } from '../../ports/intakeFiles.ts'
import type { AppendResult, NetworkSettings, SaveResult } from '../../ports/ledger.ts'

export interface ImportAsk {
  /** Files in any order: gauges are taken before readings. */
  paths: readonly string[]
  /** What all of them hold; told from their first lines when left out. */
  kind?: Exclude<FileKind, 'stations'> | undefined
  /** A station list for `.dly` files; may also stand among the paths. */
  stations?: string | undefined
  network: {
    /** Which network; may be left out where the ledger has one or none. A new one is made with these settings. */
    id?: string | undefined
    name?: string | undefined
    timeZone?: string | undefined
    readingTime?: string | undefined
    language?: NetworkSettings['language'] | undefined
  }
  /** Zone of this computer, for a network that is made without one. */
  localTimeZone: string
  /** Of the amounts; must be given for tables of readings. */
  unit?: Unit | undefined
  columns?: Readonly<Record<string, string>> | undefined
  dayFormat?: DayFormat | undefined
  decimal?: 'point' | 'comma' | undefined
  delimiter?: string | undefined
  encoding?: string | undefined
  missing?: readonly string[] | undefined
  flagged: 'keep' | 'leave-out'
  wereInches: boolean
  /** Take the good rows, and write the others here; with several files, one such file for each, numbered. */
  keepGood?: string | undefined
  /** Kept with the readings, in the same step, so that it is known to have come. */
  delivery?: Pick<Delivery, 'key' | 'bodyHash' | 'sender' | 'name'> | undefined
  /** Only readings of these gauges; others are refused as unknown. */
  onlyGaugeIds?: ReadonlySet<string> | undefined
  /** Refuse files of gauges and of stations. */
  readingsOnly?: boolean | undefined
  onProgress?: ((path: string, done: number, total: number) => void) | undefined
}

export interface FileReport {
  path: string
  kind: FileKind
  gauges: SaveResult | null
  readings: AppendResult | null
  /** Values passed over on purpose, by what they were. */
  passedOver: Record<string, number>
  refused: { rows: number; file: string } | null
}

export interface ImportReport {
  network: NetworkSettings
  networkIsNew: boolean
  files: FileReport[]
}
