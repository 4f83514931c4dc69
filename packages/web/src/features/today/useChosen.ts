import type { DayReview, DocketRow, RollRow } from '@gaugewright/contract'
import { useMemo } from 'react'
import { docketParts } from './todayView.ts'

export type Chosen = { gaugeId: string; row: RollRow | null; docketRow: DocketRow | null; readingId: string | null }

/** The chosen gauge with its rows; the weightiest reading to decide when nobody has chosen. */
export function useChosen(review: DayReview | undefined, gaugeId: string | null): Chosen | null {
  return useMemo(() => {
    if (!review) return null
    const asked = gaugeId !== null && review.roll.some((row) => row.gaugeId === gaugeId) ? gaugeId : null
    const id = asked ?? docketParts(review).toDecide[0]?.gaugeId ?? null
    if (id === null) return null
    const row = review.roll.find((r) => r.gaugeId === id) ?? null
    const docketRow = review.docket.find((r) => r.gaugeId === id) ?? null
    return { gaugeId: id, row, docketRow, readingId: docketRow?.readingId ?? row?.readingId ?? null }
  }, [review, gaugeId])
}
