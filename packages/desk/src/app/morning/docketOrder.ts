/** The docket's order: the weightiest doubt first. Weight = doubt × how much the map would change. */
import type { DocketRow } from '@gaugewright/contract'

/**
 * Doubt times map change (mm over the basin). A small floor keeps a great doubt that moves no map (a lone gauge, a dry
 * corner) from sinking below a small doubt that moves it a little.
 */
export function docketWeight(standsOdds: number, mapChangeMm: number): number {
  const FLOOR_MM = 0.01
  return (1 - standsOdds) * (mapChangeMm + FLOOR_MM)
}

/** Undecided before asked, then by weight, then by doubt, then by code, so that the order is the same every time. */
export function inDocketOrder(rows: readonly DocketRow[]): DocketRow[] {
  return [...rows].sort(
    (a, b) =>
      Number(a.decision !== null) - Number(b.decision !== null) ||
      b.weight - a.weight ||
      a.standsOdds - b.standsOdds ||
      (a.code < b.code ? -1 : a.code > b.code ? 1 : 0),
  )
}
