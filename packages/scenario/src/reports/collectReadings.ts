/** The working table as readings with texts and instants, ordered by last day and gauge, with the truth beside them. */
import type { Observer } from '../people/observer.ts'
import type { ScenarioReadings, ScenarioTruth } from '../scenario.ts'
import { NOTHING, type ReportTable, truthKinds } from './reportTable.ts'
import { typeAmount } from './typeAmount.ts'

const MS_PER_MIN = 60_000
const MS_PER_DAY = 86_400_000
const UM_PER_HUNDREDTH_INCH = 254
const UM_PER_HUNDREDTH_MM = 10

export interface CollectAsk {
  table: ReportTable
  observers: readonly Observer[]
  /** Minutes to add to local time to get UTC. */
  utcMinusLocalMin: number
  /** Reports received after this instant (ms) have not come yet. */
  receivedByMs: number
  /** Remarks by cell of the table. */
  remarks: ReadonlyMap<number, string>
}

export interface Collected {
  readings: ScenarioReadings
  truth: Omit<ScenarioTruth, 'morning'>
  /** Place in the readings of each cell of the last day, -1 where there is none. */
  readingOfGaugeToday: Int32Array
}

export function collectReadings(ask: CollectAsk): Collected {
  const { table, observers } = ask
  const cells = cellsReceived(ask)
  const readings = emptyReadings(cells.length)
  const truth = {
    kinds: truthKinds,
    kind: new Uint8Array(cells.length),
    caughtUm: new Int32Array(cells.length),
    ownFirstDay: new Int32Array(cells.length),
    ownLastDay: new Int32Array(cells.length),
  }
  const readingOfGaugeToday = new Int32Array(table.gaugeCount).fill(-1)
  const previousCell = new Int32Array(table.gaugeCount).fill(-1)
  const remarks = new Map<number, string>()
  cells.forEach((cell, index) => {
    const gauge = cell % table.gaugeCount
    const dayIndex = (cell - gauge) / table.gaugeCount
    const observer = observers[gauge]!
    const inMm = table.inMm[cell] === 1
    const firstIndex = dayIndex - table.spanDays[cell]! + 1
    const before = previousCell[gauge]!
    const isAfterLast = before !== -1 && Math.floor(before / table.gaugeCount) === firstIndex - 1
    readings.gauge[index] = gauge
    readings.firstDay[index] = table.firstDay + firstIndex
    readings.lastDay[index] = table.firstDay + dayIndex
    readings.endsAtMs[index] = endMs(ask, cell)
    readings.startsAtMs[index] = isAfterLast ? endMs(ask, before) : instantMs(ask, firstIndex - 1, observer.readsAtMin)
    readings.receivedAtMs[index] = endMs(ask, cell) + table.delayMin[cell]! * MS_PER_MIN
    readings.inMm[index] = table.inMm[cell]!
    readings.isTrace[index] = table.isTrace[cell]!
    readings.amountUm[index] = table.typed[cell]! * (inMm ? UM_PER_HUNDREDTH_MM : UM_PER_HUNDREDTH_INCH)
    readings.text.push(
      typeAmount(table.typed[cell]!, table.isTrace[cell] === 1, inMm, observer.style, table.decimals[cell]!),
    )
    truth.kind[index] = table.kind[cell]!
    truth.caughtUm[index] = Math.round(table.caughtMm[cell]! * 1000)
    truth.ownFirstDay[index] = table.firstDay + table.ownFirst[cell]!
    truth.ownLastDay[index] = table.firstDay + table.ownLast[cell]!
    previousCell[gauge] = cell
    const remark = ask.remarks.get(cell)
    if (remark !== undefined) remarks.set(index, remark)
    if (dayIndex === table.dayCount - 1) readingOfGaugeToday[gauge] = index
  })
  return { readings: { ...readings, remarks }, truth, readingOfGaugeToday }
}

function cellsReceived(ask: CollectAsk): number[] {
  const { table } = ask
  const cells: number[] = []
  for (let cell = 0; cell < table.typed.length; cell++) {
    if (table.typed[cell] === NOTHING) continue
    if (endMs(ask, cell) + table.delayMin[cell]! * MS_PER_MIN <= ask.receivedByMs) cells.push(cell)
  }
  return cells
}

function endMs(ask: CollectAsk, cell: number): number {
  return instantMs(ask, Math.floor(cell / ask.table.gaugeCount), ask.table.endMin[cell]!)
}

function instantMs(ask: CollectAsk, dayIndex: number, minute: number): number {
  return (ask.table.firstDay + dayIndex) * MS_PER_DAY + (minute + ask.utcMinusLocalMin) * MS_PER_MIN
}

function emptyReadings(count: number): ScenarioReadings {
  return {
    count,
    gauge: new Uint16Array(count),
    firstDay: new Int32Array(count),
    lastDay: new Int32Array(count),
    startsAtMs: new Float64Array(count),
    endsAtMs: new Float64Array(count),
    receivedAtMs: new Float64Array(count),
    text: [],
    inMm: new Uint8Array(count),
    amountUm: new Int32Array(count),
    isTrace: new Uint8Array(count),
    remarks: new Map(),
  }
}
