/** A test network with labelled mistakes, loaded whole: gauges, the table with mistakes, the clean one, and the labels. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gunzipSync } from 'node:zlib'
import { type DailyTable, emptyDailyTable, type GaugeSet } from '@gaugewright/science'
import { parseWideCsv } from './parseWideCsv.ts'
import { parseTruth, type TruthRow } from './truth.ts'

export const injectedSetNames = ['trentino', 'parana', 'florida'] as const
export type InjectedSetName = (typeof injectedSetNames)[number]

export interface GaugeRow {
  id: string
  latDeg: number
  lonDeg: number
  elevationM: number | null
}

export interface InjectedSet {
  name: InjectedSetName
  /** In the order of every table's columns. */
  gaugeRows: GaugeRow[]
  /** The same gauges on a local plane (equirectangular about their mean; good to 1 % over a few hundred km). */
  gauges: GaugeSet
  /** The unit in which the observers read. */
  unit: 'mm' | 'in'
  /** The block with mistakes in it. */
  injected: DailyTable
  /** The same days without. */
  clean: DailyTable
  /** Clean readings before the block, or null where there are none. */
  history: DailyTable | null
  truth: TruthRow[]
}

/** The step in which the network's amounts are written. */
export function stepMmOf(set: InjectedSet): number {
  return set.unit === 'in' ? 0.254 : 0.1
}

/** Days of a half of the block, by date; the odd day belongs to the first half. */
export function daysOfHalf(table: DailyTable, half: 'first' | 'second' | 'all'): { fromDay: number; toDay: number } {
  const lastDay = table.firstDay + table.dayCount - 1
  const secondStarts = table.firstDay + Math.ceil(table.dayCount / 2)
  if (half === 'first') return { fromDay: table.firstDay, toDay: secondStarts - 1 }
  if (half === 'second') return { fromDay: secondStarts, toDay: lastDay }
  return { fromDay: table.firstDay, toDay: lastDay }
}

/** @param dataFolder as found by findDataFolder */
export function loadInjected(dataFolder: string, name: InjectedSetName): InjectedSet {
  const folder = join(dataFolder, `${name}-daily`)
  const gaugeRows = parseGauges(readFileSync(join(folder, 'gauges.csv'), 'utf8'))
  const ids = gaugeRows.map((row) => row.id)
  const injected = parseWideCsv(gunzipSync(readFileSync(join(folder, 'injected.csv.gz'))), ids)
  const whole = parseWideCsv(gunzipSync(readFileSync(join(folder, 'readings.csv.gz'))), ids)
  return {
    name,
    gaugeRows,
    gauges: onPlane(gaugeRows),
    unit: name === 'florida' ? 'in' : 'mm',
    injected,
    clean: sliceDays(whole, injected.firstDay, injected.dayCount),
    history:
      injected.firstDay > whole.firstDay ? sliceDays(whole, whole.firstDay, injected.firstDay - whole.firstDay) : null,
    truth: parseTruth(readFileSync(join(folder, 'truth.csv'), 'utf8'), ids),
  }
}

/** Days of a table as a new table; days outside it are empty. */
export function sliceDays(table: DailyTable, firstDay: number, dayCount: number): DailyTable {
  const part = emptyDailyTable(table.gaugeCount, firstDay, dayCount)
  const n = table.gaugeCount
  const from = Math.max(firstDay, table.firstDay)
  const until = Math.min(firstDay + dayCount, table.firstDay + table.dayCount)
  if (until <= from) return part
  const source = (from - table.firstDay) * n
  const end = (until - table.firstDay) * n
  const target = (from - firstDay) * n
  part.amountMm.set(table.amountMm.subarray(source, end), target)
  part.isTrace.set(table.isTrace.subarray(source, end), target)
  part.spanDays.set(table.spanDays.subarray(source, end), target)
  part.settled.set(table.settled.subarray(source, end), target)
  return part
}

function parseGauges(text: string): GaugeRow[] {
  const lines = text.split(/\r?\n/).filter((line) => line !== '')
  const header = lines[0]!.split(',')
  const column = (name: string): number => header.indexOf(name)
  return lines.slice(1).map((line) => {
    const cells = line.split(',')
    const elevation = cells[column('elev_m')] ?? ''
    return {
      id: cells[column('id')]!,
      latDeg: Number(cells[column('lat')]),
      lonDeg: Number(cells[column('lon')]),
      elevationM: elevation === '' ? null : Number(elevation),
    }
  })
}

function onPlane(rows: readonly GaugeRow[]): GaugeSet {
  const meanLatDeg = rows.reduce((sum, row) => sum + row.latDeg, 0) / rows.length
  const meanLonDeg = rows.reduce((sum, row) => sum + row.lonDeg, 0) / rows.length
  const metresPerDegree = (6_371_008.8 * Math.PI) / 180
  const shrink = Math.cos((meanLatDeg * Math.PI) / 180)
  return {
    ids: rows.map((row) => row.id),
    xM: Float64Array.from(rows, (row) => (row.lonDeg - meanLonDeg) * metresPerDegree * shrink),
    yM: Float64Array.from(rows, (row) => (row.latDeg - meanLatDeg) * metresPerDegree),
    elevationM: Float64Array.from(rows, (row) => row.elevationM ?? Number.NaN),
  }
}
