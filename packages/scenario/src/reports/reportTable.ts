/**
 * What was typed for every gauge and day, beside what the gauge held: the scenario's own working table.
 * Cell of gauge g on day index d (days since `firstDay`): d × gaugeCount + g.
 */
import { type ExplanationKind, mistakes } from '@gaugewright/science'

/** `stands`, then every mistake, in the order of the list of mistakes. Cell values of `kind` are places in it. */
export const truthKinds: readonly ExplanationKind[] = ['stands', ...mistakes]

export function truthKind(kind: ExplanationKind): number {
  return truthKinds.indexOf(kind)
}

export interface ReportTable {
  gaugeCount: number
  firstDay: number
  dayCount: number
  /** Typed amount in hundredths of the typed unit; -1 where nothing was sent. */
  typed: Int32Array
  isTrace: Uint8Array
  /** 1 where the amount was typed as mm. */
  inMm: Uint8Array
  /** Decimals typed, or 255 for the observer's own way. */
  decimals: Uint8Array
  /** Days the report says it covers. */
  spanDays: Uint8Array
  /** Place in `truthKinds`. */
  kind: Uint8Array
  /** Local minute of the day at which the gauge was read, and minutes from then to receipt. */
  endMin: Int16Array
  delayMin: Int32Array
  /** What the gauge held over the days the report says it covers (mm). */
  caughtMm: Float32Array
  /** What a careful report of those days would have said, hundredths of the gauge's unit. */
  honest: Int32Array
  /** Day indices that the typed amount really stems from. */
  ownFirst: Int32Array
  ownLast: Int32Array
}

export const NOTHING = -1
export const OWN_DECIMALS = 255

export function emptyReportTable(gaugeCount: number, firstDay: number, dayCount: number): ReportTable {
  const cells = gaugeCount * dayCount
  return {
    gaugeCount,
    firstDay,
    dayCount,
    typed: new Int32Array(cells).fill(NOTHING),
    isTrace: new Uint8Array(cells),
    inMm: new Uint8Array(cells),
    decimals: new Uint8Array(cells).fill(OWN_DECIMALS),
    spanDays: new Uint8Array(cells),
    kind: new Uint8Array(cells),
    endMin: new Int16Array(cells),
    delayMin: new Int32Array(cells),
    caughtMm: new Float32Array(cells),
    honest: new Int32Array(cells).fill(NOTHING),
    ownFirst: new Int32Array(cells),
    ownLast: new Int32Array(cells),
  }
}

/** Take a report out of the table. */
export function clearCell(table: ReportTable, cell: number): void {
  table.typed[cell] = NOTHING
  table.isTrace[cell] = 0
  table.kind[cell] = 0
  table.spanDays[cell] = 0
}

/** Put a wrong amount in place of the honest one. */
export function mistype(table: ReportTable, cell: number, typed: number, kind: ExplanationKind): void {
  table.typed[cell] = typed
  table.isTrace[cell] = 0
  table.kind[cell] = truthKind(kind)
}
