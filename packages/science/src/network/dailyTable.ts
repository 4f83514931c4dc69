/**
 * Daily reports of many gauges as one dense table, the form in which archives and mornings are judged.
 * Cell of gauge g on epoch day d: index (d - firstDay) * gaugeCount + g.
 */
export interface DailyTable {
  gaugeCount: number
  /** Whole days since 1970-01-01 of the first row. */
  firstDay: number
  dayCount: number
  /** mm as reported; NaN where nothing was reported. */
  amountMm: Float64Array
  /** 1 where the report was a trace. */
  isTrace: Uint8Array
  /** Days covered by the report: 1, or k for a declared total over the k days ending here; 0 where nothing was reported. */
  spanDays: Uint8Array
  /**
   * How far a person has already settled the cell: NaN where nobody has, 1 where it was decided to stand or amended
   * (the amount is then the amended one). A set-aside reading is simply missing.
   */
  settled: Float32Array
  /** 1 where the observer was asked back at entry, looked again, and gave this amount; left out where nobody asks. */
  isConfirmed?: Uint8Array
}

export function emptyDailyTable(gaugeCount: number, firstDay: number, dayCount: number): DailyTable {
  const cells = gaugeCount * dayCount
  return {
    gaugeCount,
    firstDay,
    dayCount,
    amountMm: new Float64Array(cells).fill(Number.NaN),
    isTrace: new Uint8Array(cells),
    spanDays: new Uint8Array(cells),
    settled: new Float32Array(cells).fill(Number.NaN),
  }
}
