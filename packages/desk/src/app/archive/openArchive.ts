/** Reads the files of `check` and `expect` into one table, and settles which days are asked for. */
import type { Problem } from '@gaugewright/contract'
import {
  type DailyTable,
  type GaugeSet,
  type GeoRow,
  isoFromEpochDay,
  type PlaneRow,
  placeGauges,
  projectionFor,
  type Unit,
} from '@gaugewright/science'
import type { ArchiveFiles, PlacesTable } from '../../ports/archiveFiles.ts'
import { type Answer, answered, refused } from '../answer.ts'
import { archiveTable } from './archiveTable.ts'

export interface ArchiveAsk {
  gauges: string
  readings: string
  history?: string | undefined
  /** `POINTS.csv`, for expectations at places without a gauge. */
  points?: string | undefined
  unit: Unit
  /** Epoch days; null for the first or last day of the readings. */
  fromDay: number | null
  toDay: number | null
}

export interface Archive {
  gauges: GaugeSet
  table: DailyTable
  points: GaugeSet | null
  fromDay: number
  toDay: number
}

export async function openArchive(files: ArchiveFiles, ask: ArchiveAsk): Promise<Answer<Archive>> {
  const places = await files.readPlaces(ask.gauges, {})
  if (!places.ok) return places
  const { gaugeIds, plane } = places.value
  const points = ask.points === undefined ? null : await files.readPlaces(ask.points, { idNames: ['point'] })
  if (points !== null && !points.ok) return points
  if (points !== null && points.value.plane !== plane) return planesDiffer(plane, points.value.plane)
  const readings = await files.readReadings(ask.readings, { unit: ask.unit, gaugeIds })
  if (!readings.ok) return readings
  const { table } = readings.value
  const fromDay = Math.max(ask.fromDay ?? table.firstDay, table.firstDay)
  const toDay = Math.min(ask.toDay ?? Number.POSITIVE_INFINITY, table.firstDay + table.dayCount - 1)
  if (fromDay > toDay) return noDays(ask, table)
  let history: DailyTable | null = null
  if (ask.history !== undefined) {
    const read = await files.readReadings(ask.history, { unit: ask.unit, gaugeIds, toDay: fromDay - 1 })
    if (!read.ok && read.problem.code !== 'NO_READINGS') return read
    history = read.ok ? read.value.table : null
  }
  return answered({
    ...placed(places.value, points === null ? null : points.value),
    table: archiveTable(table, history, fromDay),
    fromDay,
    toDay,
  })
}

/** Gauges and points on one and the same plane, which is centred on the gauges. */
function placed(gauges: PlacesTable, points: PlacesTable | null): { gauges: GaugeSet; points: GaugeSet | null } {
  if (gauges.plane === 'metres') {
    return { gauges: placeGauges(planeRows(gauges)), points: points === null ? null : placeGauges(planeRows(points)) }
  }
  const rows = geoRows(gauges)
  const projection = projectionFor(rows)
  return {
    gauges: placeGauges(rows, projection),
    points: points === null ? null : placeGauges(geoRows(points), projection),
  }
}

function geoRows(table: PlacesTable): GeoRow[] {
  return table.gaugeIds.map((id, index) => ({
    id,
    latDeg: table.latDeg[index] ?? Number.NaN,
    lonDeg: table.lonDeg[index] ?? Number.NaN,
    elevationM: elevationOf(table, index),
  }))
}

function planeRows(table: PlacesTable): PlaneRow[] {
  return table.gaugeIds.map((id, index) => ({
    id,
    xM: table.xM[index] ?? Number.NaN,
    yM: table.yM[index] ?? Number.NaN,
    elevationM: elevationOf(table, index),
  }))
}

function elevationOf(table: PlacesTable, index: number): number | null {
  const elevationM = table.elevationM[index] ?? Number.NaN
  return Number.isNaN(elevationM) ? null : elevationM
}

function noDays(ask: ArchiveAsk, table: DailyTable): { ok: false; problem: Problem } {
  const day = (epochDay: number | null): string => (epochDay === null ? 'the end' : isoFromEpochDay(epochDay))
  const lastDay = isoFromEpochDay(table.firstDay + table.dayCount - 1)
  return refused(
    'DAYS_OUTSIDE_READINGS',
    `from ${day(ask.fromDay)} to ${day(ask.toDay)}, but the readings run from ${isoFromEpochDay(table.firstDay)} to ${lastDay}`,
    'Give days within the readings with --from and --to, the earlier one first.',
  )
}

function planesDiffer(gauges: string, points: string): { ok: false; problem: Problem } {
  return refused(
    'PLANES_DIFFER',
    `gauges in ${gauges} and points in ${points}`,
    'Give both in degrees (lat,lon) or both in metres (x_m,y_m).',
  )
}
