/**
 * What is said of one explanation to the coordinator, before any language: its degree, the figures that matter, and what
 * was expected. A language only has to put it into words. Amounts in mm, days as epoch days.
 */
import type { Explanation, Unit } from '@gaugewright/science'
import { type Degree, degreeOf } from './degree.ts'
import { type Expected, expectedForm, isSaidAlike, type Place, placeOf } from './expected.ts'
import { isReadable, mmPer } from './figures.ts'
import { type Swap, swapOf } from './mistakenText.ts'
import { rangeOf, type WordingAsk } from './wordingAsk.ts'

export type Claim = {
  degree: Degree
  typedMm: number
  /** The figure as it was typed. */
  typedText: string
  isTrace: boolean
  /** For the reading's own day, or its own days. */
  expected: Expected
  spanDays: number
} & ClaimDetail

type ClaimDetail =
  | { kind: 'stands'; place: Place }
  /**
   * `places` is null where it is not known how the point slipped. A point that moved left may hide digits; one that moved
   * right may leave finer ones than a gauge shows.
   */
  | { kind: 'decimal'; places: 1 | 2 | null; meantMm: number; isRounded: boolean; hidesDigits: boolean }
  /**
   * `isConverted`: the amount went through a conversion that it did not need; else the field had the other unit.
   * `isOffScale`: it has hundredths, which no millimetre scale shows and which speaks against it.
   */
  | { kind: 'unit'; measuredIn: Unit; isConverted: boolean; isOffScale: boolean; meantMm: number }
  /** `owner` of what was typed: the other day, of the amount here; this day, of the amount there; `both`, of two zeros. */
  | {
      kind: 'day'
      owner: 'other' | 'this' | 'both'
      day: number
      otherDay: number
      otherMm: number | null
      otherExpected: Expected | null
      /** Amid days that are all dated off: what was typed on the other side and belongs to this day. */
      belongsHere: { day: number; amountMm: number } | null
    }
  /** `isTotal`: this reading is the total; else it is one of the days that a later total holds. */
  | {
      kind: 'carried'
      isTotal: boolean
      endsOn: number
      totalMm: number
      firstDay: number
      lastDay: number
      dayCount: number
      before: 'zeros' | 'silence' | 'both'
      totalExpected: Expected | null
      /** The same is said of all the days as of this one: the others were expected dry. */
      isAllThisDay: boolean
    }
  | { kind: 'first-fill-lost'; meantMm: number }
  /** `isAbove`: the full tube alone is more than was expected, which speaks against it. */
  | { kind: 'first-fill-only'; isAbove: boolean }
  | { kind: 'false-zero' }
  | { kind: 'wetted'; isSmall: boolean; maySnow: boolean }
  | ({ kind: 'transposed' } & Swap)
  | { kind: 'repeated'; earlierDay: number }
  | { kind: 'other'; mayBeShower: boolean }

/** Dew, fog and a few splashes hardly leave more (common practice: a night's dew is at most about 0.8 mm). */
const MOST_DEW_MM = 1
/** Below these odds of standing a shower that no neighbour caught is not offered as a way out. */
const LEAST_SHOWER_ODDS = 0.1

/** @param isFirst  of the likeliest explanation, which heads the finding */
export function claimOf(explanation: Explanation, ask: WordingAsk, isFirst: boolean): Claim {
  const { finding, unit } = ask
  const range = rangeOf(finding)
  return {
    degree: degreeOf(explanation.odds, isFirst),
    typedMm: finding.reportedMm,
    typedText: ask.typedText,
    isTrace: finding.isTrace,
    expected: expectedForm(range, unit),
    spanDays: finding.spanDays,
    ...detailOf(explanation, ask, placeOf(finding.reportedMm, range, unit)),
  }
}

function detailOf(explanation: Explanation, ask: WordingAsk, place: Place): ClaimDetail {
  const { finding } = ask
  const { detail, impliedMm } = explanation
  switch (explanation.kind) {
    case 'stands':
      return { kind: 'stands', place }
    case 'decimal': {
      if (detail?.kind !== 'decimal')
        return { kind: 'decimal', places: null, meantMm: impliedMm, isRounded: true, hidesDigits: true }
      const meantMm = finding.reportedMm / 10 ** detail.places
      const hidesDigits = detail.places < 0
      const isRounded = hidesDigits || !isReadable(meantMm, ask.typedUnit)
      return { kind: 'decimal', places: Math.abs(detail.places) === 1 ? 1 : 2, meantMm, isRounded, hidesDigits }
    }
    case 'unit': {
      const measuredIn = detail?.kind === 'unit' ? detail.measuredIn : 'in'
      const isConverted = measuredIn === ask.typedUnit
      // The same figure in the other unit is plain arithmetic; back through a conversion the explanation knows the cell.
      const sameFigureMm = measuredIn === 'in' ? finding.reportedMm * mmPer.in : finding.reportedMm / mmPer.in
      const meantMm = isConverted ? impliedMm : sameFigureMm
      const isOffScale = measuredIn === 'mm' && !isConverted && !isReadable(finding.reportedMm / mmPer.in, 'mm')
      return { kind: 'unit', measuredIn, isConverted, isOffScale, meantMm }
    }
    case 'day':
      return dayDetail(explanation, ask)
    case 'carried':
      return carriedDetail(explanation, ask)
    case 'first-fill-lost':
      return { kind: 'first-fill-lost', meantMm: impliedMm }
    case 'first-fill-only':
      return { kind: 'first-fill-only', isAbove: place === 'above' || place === 'far above' }
    case 'wetted':
      return { kind: 'wetted', isSmall: finding.reportedMm <= MOST_DEW_MM, maySnow: ask.isSnowSeason }
    case 'transposed':
      return { kind: 'transposed', ...swapOf(explanation, ask) }
    case 'repeated':
      return { kind: 'repeated', earlierDay: detail?.kind === 'repeated' ? detail.earlierDay : finding.day - 1 }
    case 'other':
      return {
        kind: 'other',
        mayBeShower: (place === 'above' || place === 'far above') && finding.standsOdds >= LEAST_SHOWER_ODDS,
      }
    default:
      return { kind: explanation.kind }
  }
}

function dayDetail({ detail, impliedMm }: Explanation, ask: WordingAsk): ClaimDetail {
  const { finding } = ask
  const otherDay = detail?.kind === 'day' ? detail.otherDay : finding.day
  const otherMm = detail?.kind === 'day' ? detail.otherReportedMm : null
  // An empty day whose rain is dated to the other: what was typed there is what this explanation implies here.
  const isEmptyDay = finding.reportedMm <= 0 && otherMm !== null && otherMm > 0 && impliedMm === otherMm
  // Amid a stretch, what belongs here was typed on the far side of the day that this reading belongs to.
  const isAmid = finding.reportedMm > 0 && impliedMm > 0
  return {
    kind: 'day',
    owner: isEmptyDay ? 'this' : finding.reportedMm <= 0 ? 'both' : 'other',
    day: finding.day,
    otherDay,
    otherMm,
    otherExpected: spanExpected(otherDay, otherDay, ask)?.expected ?? null,
    belongsHere: isAmid ? { day: 2 * finding.day - otherDay, amountMm: impliedMm } : null,
  }
}

function carriedDetail({ detail, firstDay, lastDay }: Explanation, ask: WordingAsk): ClaimDetail {
  const { finding } = ask
  const endsOn = detail?.kind === 'carried' ? detail.endsOn : lastDay
  const dayCount = detail?.kind === 'carried' ? detail.dayCount : lastDay - firstDay + 1
  const span = spanExpected(firstDay, lastDay, ask)
  const silentDays = span?.silentDays ?? 0
  return {
    kind: 'carried',
    isTotal: endsOn === finding.day,
    endsOn,
    totalMm: detail?.kind === 'carried' ? detail.totalMm : finding.reportedMm,
    firstDay,
    lastDay,
    dayCount,
    before: silentDays === 0 ? 'zeros' : silentDays >= dayCount - 1 ? 'silence' : 'both',
    totalExpected: span?.expected ?? null,
    isAllThisDay: span !== null && isSaidAlike(span.expected, expectedForm(rangeOf(finding), ask.unit), ask.unit),
  }
}

function spanExpected(
  firstDay: number,
  lastDay: number,
  ask: WordingAsk,
): { expected: Expected; silentDays: number } | null {
  const span = ask.expectedSpans.find((one) => one.firstDay === firstDay && one.lastDay === lastDay)
  return span === undefined ? null : { expected: expectedForm(span, ask.unit), silentDays: span.silentDays }
}
