/**
 * The ways in which one report alone, without the days around it, may have come about: for each the chance that the
 * true amount was such and the report came out as it did. Day slips and carried totals span days: see sequence.ts.
 */
import { isMultiple } from '../climate/resolution.ts'
import type { AmountLaw } from './amountLaw.ts'
import type { ExplanationDetail } from './finding.ts'
import type { ExplanationKind } from './mistake.ts'
import { mistakeShare } from './rates.ts'

export interface ReportSeen {
  amountMm: number
  isTrace: boolean
  /** Reported the day before, mm; NaN where nothing was. */
  previousMm: number
  resolutionMm: number
  tubeMm: number
}

/** One explanation with its weight: prior chance × likelihood. The true amount lies in (lowMm, highMm]. */
export interface Source {
  kind: ExplanationKind
  weight: number
  lowMm: number
  highMm: number
  detail: ExplanationDetail | null
}

const mmPerInch = 25.4
const largestMm = 500
/** Chance of an amount off the gauge's own steps, if a slip moved it there. */
const offStep = 0.05

/** Weights of all explanations of one report; the first is that it stands. `rate` is the gauge's share of mistakes. */
export function sourcesOf(report: ReportSeen, law: AmountLaw, rate: number): Source[] {
  const out: Source[] = []
  const step = report.resolutionMm
  const half = step / 2
  const y = report.amountMm
  if (y <= half) {
    if (report.isTrace) {
      out.push(source('stands', (1 - rate) * law.mass(half, 3 * half), half, 3 * half))
      out.push(source('wetted', rate * mistakeShare.wetted * law.dry * wettedShare(0, half), -1, 0))
      out.push(source('other', rate * mistakeShare.other * 0.02, 0, largestMm))
      return out
    }
    const dry = law.dry
    out.push(source('stands', (1 - rate) * dry, -1, 0))
    out.push(source('false-zero', rate * mistakeShare['false-zero'] * (1 - dry), half, largestMm))
    return out
  }
  out.push(source('stands', (1 - rate) * law.mass(y - half, y + half), y - half, y + half))
  const add = (
    kind: ExplanationKind,
    share: number,
    lowMm: number,
    highMm: number,
    detail: ExplanationDetail | null = null,
  ) => {
    if (highMm <= half || lowMm >= largestMm * 3) return
    const weight = rate * share * law.mass(Math.max(half, lowMm), highMm)
    if (weight > 0) out.push(source(kind, weight, Math.max(half, lowMm), highMm, detail))
  }
  addDecimals(y, step, add)
  addUnits(y, step, add)
  add('first-fill-lost', mistakeShare['first-fill-lost'], y + report.tubeMm - half, y + report.tubeMm + half)
  if (Math.abs(y - report.tubeMm) <= Math.max(half, 0.15))
    add('first-fill-only', mistakeShare['first-fill-only'], y + half, 11 * report.tubeMm)
  addTransposed(y, step, add)
  out.push(source('wetted', rate * mistakeShare.wetted * law.dry * wettedShare(y - half, y + half), -1, 0))
  if (Math.abs(y - report.previousMm) < 0.006)
    out.push(
      source('repeated', rate * mistakeShare.repeated, -1, largestMm, {
        kind: 'repeated',
        earlierDay: 0,
        earlierMm: y,
      }),
    )
  const other = Math.log((y + half) / Math.max(y - half, 0.02)) / Math.log(largestMm / half)
  out.push(source('other', rate * mistakeShare.other * other, -1, largestMm))
  return out
}

type Add = (
  kind: ExplanationKind,
  share: number,
  lowMm: number,
  highMm: number,
  detail?: ExplanationDetail | null,
) => void

function source(
  kind: ExplanationKind,
  weight: number,
  lowMm: number,
  highMm: number,
  detail: ExplanationDetail | null = null,
): Source {
  return { kind, weight, lowMm, highMm, detail }
}

/** Slips by one place are four times as common as by two; up and down alike. */
function addDecimals(y: number, step: number, add: Add): void {
  for (const places of [1, -1, 2, -2] as const) {
    const factor = 10 ** places
    const trueMm = y / factor
    const share = mistakeShare.decimal * (Math.abs(places) === 1 ? 0.4 : 0.1)
    const fits = places > 0 && !isMultiple(trueMm, step) ? offStep : 1
    const halfMm = places > 0 ? step / 2 : step / 2 / factor
    add('decimal', share * fits, trueMm - halfMm, trueMm + halfMm, { kind: 'decimal', places })
  }
}

function addUnits(y: number, step: number, add: Add): void {
  const written = isMultiple(y, 0.1) ? 0.05 : 0.005
  const inchHalf = Math.max(step / 2, written * mmPerInch)
  add('unit', mistakeShare.unit / 2, y * mmPerInch - inchHalf, y * mmPerInch + inchHalf, {
    kind: 'unit',
    measuredIn: 'in',
  })
  add('unit', mistakeShare.unit / 2, y / mmPerInch - step / 2, y / mmPerInch + step / 2, {
    kind: 'unit',
    measuredIn: 'mm',
  })
}

/** Neighbouring digits swapped, in the written millimetres and, for an inch gauge, in hundredths of an inch. */
function addTransposed(y: number, step: number, add: Add): void {
  const scales = step === 0.254 ? [0.254, 0.01] : isMultiple(y, 0.1) ? [0.1] : [0.01]
  for (const unitMm of scales) {
    const digits = String(Math.round(y / unitMm))
    const candidates = new Set<number>()
    for (let k = 0; k + 1 < digits.length; k++) {
      if (digits[k] === digits[k + 1]) continue
      if (k === 0 && digits[1] === '0') continue
      const swapped = digits.slice(0, k) + digits[k + 1] + digits[k] + digits.slice(k + 2)
      candidates.add(Number(swapped))
    }
    for (const value of candidates) {
      const trueMm = value * unitMm
      add(
        'transposed',
        mistakeShare.transposed / (candidates.size * scales.length),
        trueMm - step / 2,
        trueMm + step / 2,
        {
          kind: 'transposed',
          originalText: String(Math.round(trueMm * 1000) / 1000),
        },
      )
    }
  }
}

/** Water that is not rain: dew and splash (mean 0.7 mm), now and then a sprinkler (mean 5 mm). Common practice. */
function wettedShare(lowMm: number, highMm: number): number {
  const low = Math.max(0, lowMm)
  return 0.65 * (Math.exp(-low / 0.7) - Math.exp(-highMm / 0.7)) + 0.35 * (Math.exp(-low / 5) - Math.exp(-highMm / 5))
}
