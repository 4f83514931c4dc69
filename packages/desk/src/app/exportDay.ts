/** One day's gauges as GeoJSON: what each answered and what is accepted. Observers are not named. */
import type { ExportedDay } from '@gaugewright/contract'
import { coarsenPosition } from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { reviewDay } from './reviewDay.ts'

export interface ExportDayAsk {
  day: string
  /** Exact positions for work inside the network; two decimals otherwise. */
  exactPositions?: boolean
}

export async function exportDay(ports: Ports, ask: ExportDayAsk): Promise<Answer<ExportedDay>> {
  const reviewed = await reviewDay(ports, { day: ask.day })
  if (!reviewed.ok) return reviewed
  const { day, roll } = reviewed.value
  return answered({
    type: 'FeatureCollection',
    features: roll.map((row) => ({
      type: 'Feature' as const,
      id: row.code,
      geometry: { type: 'Point' as const, coordinates: coordinatesOf(row, ask.exactPositions === true) },
      properties: {
        gauge: row.code,
        name: row.name,
        day,
        answer: row.answer,
        amountMm: row.acceptedUm === null ? null : row.acceptedUm / 1000,
        isTrace: row.decision?.amended?.isTrace ?? row.isTrace,
        days: row.spanDays,
        standsOdds: row.standsOdds,
        decision: row.decision?.verdict ?? null,
      },
    })),
  })
}

/** Longitude first (RFC 7946). */
function coordinatesOf(place: { latDeg: number; lonDeg: number }, isExact: boolean): [number, number] {
  const { latDeg, lonDeg } = isExact ? place : coarsenPosition(place)
  return [lonDeg, latDeg]
}
