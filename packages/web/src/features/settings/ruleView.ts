/** Pure view of the rule: which point of the curve is meant, where it is drawn, how its figures are written. */
import type { RulePoint, RulePreview } from '@gaugewright/contract'
import { highestLetStandAt, lowestLetStandAt } from '@gaugewright/science'

/** What a person typed for a threshold: `0.98`, `0,98`, `.98`, or `98 %` and `98`; null where it is none. */
export function parseOdds(text: string): number | null {
  const found = /^\s*(\d*[.,]?\d+)\s*(%?)\s*$/.exec(text)
  if (!found) return null
  const number = Number((found[1] ?? '').replace(',', '.'))
  const odds = found[2] === '%' || number > 1 ? number / 100 : number
  const rounded = Math.round(odds * 10_000) / 10_000
  return rounded >= lowestLetStandAt && rounded <= highestLetStandAt ? rounded : null
}

/** Place of the point nearest to a threshold, in log odds, where steps are alike. -1 where there are no points. */
export function placeOf(points: readonly Pick<RulePoint, 'letStandAt'>[], letStandAt: number): number {
  const logit = (odds: number) => Math.log(odds / (1 - odds))
  let nearest = -1
  let least = Number.POSITIVE_INFINITY
  points.forEach((point, place) => {
    const apart = Math.abs(logit(point.letStandAt) - logit(letStandAt))
    if (apart < least) [nearest, least] = [place, apart]
  })
  return nearest
}

/** Place of the loosest rule that lets through no more than so many wrong readings a year; null where none does. */
export function placeForYear(points: readonly Pick<RulePoint, 'year'>[], wrongAYear: number): number | null {
  const place = points.findIndex((point) => point.year.expected <= wrongAYear)
  return place < 0 ? null : place
}

/** Share of all readings that is left to a person. */
export function leftShare(point: Pick<RulePoint, 'leftToPerson' | 'letStand'>): number {
  const all = point.leftToPerson + point.letStand
  return all === 0 ? 0 : point.leftToPerson / all
}

export type PlotPlace = { x: number; y: number; low: number; high: number }

export type RulePlotShape = {
  /** One per point of the curve, px. */
  places: PlotPlace[]
  xTicks: { value: number; x: number }[]
  yTicks: { value: number; y: number }[]
}

export type PlotFrame = {
  widthPx: number
  heightPx: number
  leftPx: number
  rightPx: number
  topPx: number
  bottomPx: number
}

/** Where the curve lies: both axes by square roots, so that the strict end is seen as well as the loose one. */
export function rulePlotShape(points: readonly RulePoint[], frame: PlotFrame): RulePlotShape {
  const mostLeft = Math.max(0.01, ...points.map(leftShare))
  const mostWrong = Math.max(1, ...points.map((point) => point.year.high))
  const x = (share: number) =>
    frame.leftPx + (frame.widthPx - frame.leftPx - frame.rightPx) * Math.sqrt(Math.min(1, share / mostLeft))
  const y = (wrong: number) =>
    frame.heightPx - frame.bottomPx - (frame.heightPx - frame.topPx - frame.bottomPx) * Math.sqrt(wrong / mostWrong)
  return {
    places: points.map((point) => ({
      x: x(leftShare(point)),
      y: y(point.year.expected),
      low: y(point.year.low),
      high: y(point.year.high),
    })),
    xTicks: rootTicks(mostLeft * 100, frame.widthPx / 70).map((value) => ({ value, x: x(value / 100) })),
    yTicks: rootTicks(mostWrong, frame.heightPx / 45).map((value) => ({ value, y: y(value) })),
  }
}

/** Round values from 0 on a square-root axis, not nearer to each other than the axis allows. */
export function rootTicks(most: number, count: number): number[] {
  const ticks = [0]
  for (let power = -1; power <= 5; power += 1)
    for (const digit of [1, 2, 5]) {
      const value = Number((digit * 10 ** power).toPrecision(1))
      const from = ticks[ticks.length - 1] ?? 0
      if (value <= most && Math.sqrt(value / most) - Math.sqrt(from / most) >= 1 / count) ticks.push(value)
    }
  return ticks
}

/** Place whose drawn point lies nearest to a position along the plot. */
export function placeAtX(places: readonly PlotPlace[], xPx: number): number {
  return places.reduce(
    (best, place, i) => (Math.abs(place.x - xPx) < Math.abs((places[best]?.x ?? 0) - xPx) ? i : best),
    0,
  )
}

/** A count as it is spoken of: a few with one decimal, many as whole numbers. */
export function countPlaces(count: number): number {
  return count < 9.95 ? 1 : 0
}

/** Points that wear their threshold on the curve, as far as they are there and do not crowd each other. */
export function labelledPlaces(points: readonly RulePoint[], places: readonly PlotPlace[], apartPx: number): number[] {
  const kept: number[] = []
  for (const letStandAt of [0.98, 0.9, 0.995, 0.99, 0.999, 0.95, 0.5, 0.9999]) {
    const i = points.findIndex((point) => point.letStandAt === letStandAt)
    const at = places[i]
    if (!at) continue
    const isClear = kept.every((k) => Math.hypot((places[k]?.x ?? 0) - at.x, (places[k]?.y ?? 0) - at.y) >= apartPx)
    if (isClear) kept.push(i)
  }
  return kept
}

/** A record this short has taught the desk little: its odds are then bolder than the truth (docs/decisions/0011). */
const YOUNG_DAYS = 60

export function isYoung(preview: Pick<RulePreview, 'recordDays'>): boolean {
  return preview.recordDays < YOUNG_DAYS
}

/** The share of a year that a preview looked at is short: seasons are missing. */
export function isShort(preview: Pick<RulePreview, 'mornings'>): boolean {
  return preview.mornings < 350
}
