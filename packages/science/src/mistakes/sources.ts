/**
 * The ways in which one report alone, without the days around it, may have come about: for each the chance that the
 * true amount was such and the report came out as it did. Day slips and carried totals span days: see sequence.ts.
 */
import type { AmountLaw } from './amountLaw.ts'
import type { ExplanationDetail } from './finding.ts'
import type { ExplanationKind } from './mistake.ts'
import { dryShareOf, type MistakeShares, mistakeShare } from './rates.ts'
import { type Reader, readMass } from './readMass.ts'

export interface ReportSeen {
  amountMm: number
  isTrace: boolean
  /** Reported the day before, mm; NaN where nothing was. */
  previousMm: number
  resolutionMm: number
  /** What its amounts are rounded to when read. */
  reader: Reader
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
/** Amounts that were added up carry their rounding along. */
export const roundingMm = 0.01
/** Of amounts out of nowhere, the part that was read off the gauge like any other; the rest may have any digits. */
const readShare = 0.5

/**
 * Weights of all explanations of one report; the first is that it stands. `rate` is the gauge's share of mistakes,
 * `shares` what they are.
 */
export function sourcesOf(
  report: ReportSeen,
  law: AmountLaw,
  rate: number,
  shares: MistakeShares = mistakeShare,
): Source[] {
  const out: Source[] = []
  const step = report.resolutionMm
  const half = step / 2
  const y = report.amountMm
  if (y <= half) {
    if (report.isTrace) {
      out.push(source('stands', (1 - rate) * law.mass(half, 3 * half), half, 3 * half))
      out.push(source('wetted', rate * shares.wetted * law.dry * wettedShare(0, half), -1, 0))
      out.push(source('other', rate * shares.other * 0.02, 0, largestMm))
      return out
    }
    const dry = law.dry
    // On a dry day most slips leave a zero a zero: such a report stands.
    out.push(source('stands', (1 - rate * dryShareOf(shares)) * dry, -1, 0))
    out.push(source('false-zero', rate * shares['false-zero'] * (1 - dry), half, largestMm))
    return out
  }
  const { reader } = report
  const read = (mm: number, toleranceMm: number) => readMass(law.mass, reader, mm, toleranceMm, half)
  const seen = read(y, 0)
  out.push(source('stands', (1 - rate) * seen, y - half, y + half))
  const add: Add = (kind, weight, lowMm, highMm, detail = null) => {
    if (highMm <= half || lowMm >= largestMm * 3 || !(weight > 0)) return
    out.push(source(kind, rate * weight, Math.max(half, lowMm), highMm, detail))
  }
  addDecimals(report, shares, read, add)
  addUnits(report, shares, law, read, add)
  const filled = y + report.tubeMm
  add('first-fill-lost', shares['first-fill-lost'] * read(filled, roundingMm), filled - half, filled + half)
  if (Math.abs(y - report.tubeMm) <= reader.writtenMm / 2 + 0.0011) {
    const over = law.mass(y + half, 11 * report.tubeMm)
    add('first-fill-only', shares['first-fill-only'] * over, y + half, 11 * report.tubeMm)
  }
  addTransposed(report, shares, read, add)
  // Drops and amounts out of nowhere: how wide a part of all amounts is written as this one.
  const strayCell = (share: (lowMm: number, highMm: number) => number) => {
    const any = reader.writtenMm / 2
    return readShare * readMass(share, reader, y, 0, 0) + (1 - readShare) * share(y - any, y + any)
  }
  out.push(source('wetted', rate * shares.wetted * law.dry * strayCell(wettedShare), -1, 0))
  if (Math.abs(y - report.previousMm) < 0.006) {
    const detail = { kind: 'repeated', earlierDay: 0, earlierMm: y } as const
    out.push(source('repeated', rate * shares.repeated, -1, largestMm, detail))
  }
  const anything = (lowMm: number, highMm: number) =>
    Math.log(highMm / Math.max(lowMm, 0.02)) / Math.log(largestMm / half)
  out.push(source('other', rate * shares.other * strayCell(anything), -1, largestMm))
  return out
}

type Read = (mm: number, toleranceMm: number) => number
type Add = (
  kind: ExplanationKind,
  weight: number,
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

/**
 * Slips by one place are four times as common as by two; up and down alike. What was read lies on the gauge's marks; a
 * point moved left may hide digits, which are kept as far as the network writes them.
 */
function addDecimals(
  { amountMm, resolutionMm, reader }: ReportSeen,
  shares: MistakeShares,
  read: Read,
  add: Add,
): void {
  for (const places of [1, -1, 2, -2] as const) {
    const factor = 10 ** places
    const trueMm = amountMm / factor
    const share = shares.decimal * (Math.abs(places) === 1 ? 0.4 : 0.1)
    const toleranceMm = reader.writtenMm / 2 / factor
    const halfMm = Math.max(resolutionMm / 2, places < 0 ? toleranceMm : 0)
    const weight = share * read(trueMm, toleranceMm)
    add('decimal', weight, trueMm - halfMm, trueMm + halfMm, { kind: 'decimal', places })
  }
}

/** Inches typed as millimetres have lost digits; millimetres typed as inches fall on few of the amounts written. */
function addUnits(
  { amountMm, resolutionMm, reader }: ReportSeen,
  shares: MistakeShares,
  law: AmountLaw,
  read: Read,
  add: Add,
): void {
  const half = resolutionMm / 2
  const share = shares.unit / 2
  const inches = amountMm * mmPerInch
  const lostMm = (reader.writtenMm / 2) * mmPerInch
  const inchHalf = Math.max(half, lostMm)
  const asInches = law.mass(Math.max(half, inches - lostMm), inches + lostMm)
  add('unit', share * asInches, inches - inchHalf, inches + inchHalf, { kind: 'unit', measuredIn: 'in' })
  const millimetres = amountMm / mmPerInch
  const asMillimetres = read(millimetres, reader.writtenMm / 2 / mmPerInch)
  add('unit', share * asMillimetres, millimetres - half, millimetres + half, { kind: 'unit', measuredIn: 'mm' })
}

/** Neighbouring digits swapped, in the written millimetres and, for an inch gauge, in hundredths of an inch. */
function addTransposed(
  { amountMm, resolutionMm, reader }: ReportSeen,
  shares: MistakeShares,
  read: Read,
  add: Add,
): void {
  const scales = resolutionMm === 0.254 ? [0.254, 0.01] : [reader.writtenMm]
  for (const unitMm of scales) {
    const digits = String(Math.round(amountMm / unitMm))
    const candidates = new Set<number>()
    for (let k = 0; k + 1 < digits.length; k++) {
      if (digits[k] === digits[k + 1]) continue
      if (k === 0 && digits[1] === '0') continue
      const swapped = digits.slice(0, k) + digits[k + 1] + digits[k] + digits.slice(k + 2)
      candidates.add(Number(swapped))
    }
    for (const value of candidates) {
      const trueMm = value * unitMm
      const share = shares.transposed / (candidates.size * scales.length)
      add('transposed', share * read(trueMm, 0), trueMm - resolutionMm / 2, trueMm + resolutionMm / 2, {
        kind: 'transposed',
        originalText: String(Math.round(trueMm * 1000) / 1000),
      })
    }
  }
}

/** Water that is not rain: dew and splash (mean 0.7 mm), now and then a sprinkler (mean 5 mm). Common practice. */
function wettedShare(lowMm: number, highMm: number): number {
  const low = Math.max(0, lowMm)
  return 0.65 * (Math.exp(-low / 0.7) - Math.exp(-highMm / 0.7)) + 0.35 * (Math.exp(-low / 5) - Math.exp(-highMm / 5))
}
