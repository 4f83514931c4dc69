/**
 * The list of stations that goes with GHCN-Daily: fixed columns, counted from 1: id 1-11, latitude 13-20, longitude
 * 22-30, elevation 32-37 (m; -999.9 unknown), state 39-40, name 42-71. Source: the GHCN-Daily readme [Menne2012].
 */
import type { GaugeRow, TextAsk } from '../ports/intakeFiles.ts'
import { IntakeRefusal } from '../ports/intakeRefusal.ts'
import { placed } from './refusal.ts'
import { textLines } from './textLines.ts'

export const stationPattern = /^[A-Z]{2}[A-Z0-9_-]{9} [ \d.-]{8} [ \d.-]{9} [ \d.-]{6}( |$)/
const UNKNOWN_ELEVATION_M = -999.9

/** @throws {IntakeRefusal} as textBlocks; DLY_LAYOUT, POSITION_NOT_VALID */
export async function readStationRows(path: string, ask: TextAsk): Promise<Map<string, GaugeRow>> {
  const stations = new Map<string, GaugeRow>()
  for await (const lines of textLines(path, ask)) {
    for (const { line, text } of lines) {
      if (text.trim() === '') continue
      if (!stationPattern.test(text)) {
        throw new IntakeRefusal(
          'DLY_LAYOUT',
          placed({ path, line, field: 'columns 1-37' }, text.slice(0, 37), 'id, latitude, longitude and elevation'),
          'Take the list of stations as the archive gives it, in its fixed columns.',
        )
      }
      const part = (first: number, last: number): string => text.slice(first - 1, last).trim()
      const number = (first: number, last: number, limit: number, field: string): number => {
        const value = part(first, last) === '' ? Number.NaN : Number(part(first, last))
        if (Math.abs(value) <= limit) return value
        const place = { path, line, field: `${field}, columns ${first}-${last}` }
        throw new IntakeRefusal('POSITION_NOT_VALID', placed(place, part(first, last), 'degrees'), 'Mend the position.')
      }
      const elevationM = Number(part(32, 37))
      stations.set(part(1, 11), {
        line,
        id: part(1, 11),
        east: number(22, 30, 180, 'longitude'),
        north: number(13, 20, 90, 'latitude'),
        elevationM: Number.isNaN(elevationM) || elevationM === UNKNOWN_ELEVATION_M ? null : elevationM,
        name: part(42, 71),
        area: part(39, 40) || null,
        observer: null,
        resolutionMm: null,
      })
    }
  }
  return stations
}
