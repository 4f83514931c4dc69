/**
 * The ways in which one report alone, without the days around it, may have come about: for each the chance that the
 * true amount was such and the report came out as it did. Day slips and carried totals span days: see sequence.ts.
 */
import { isMultiple } from '../climate/resolution.ts'
import type { AmountLaw } from './amountLaw.ts'
import type { ExplanationDetail } from './finding.ts'
import type { ExplanationKind } from './mistake.ts'
import { mistakeShare } from './rates.ts'
import { dryShareOf, type MistakeShares } from './sharesOf.ts'

export interface ReportSeen {
  amountMm: number
  isTrace: boolean
  /** Reported the day before, mm; NaN where nothing was. */
  previousMm: number
  resolutionMm: number
  /** Last place that reports of the network are written to, mm; at most the resolution. */
  writtenMm: number
  /** Chance that a right report of the gauge is off its own steps: read between lines, or converted. */
  offStepChance: number
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
/** Chance that the amount behind a slip is itself off the gauge's steps. */
const offStep = 0.05
/** Chance that an amount out of nowhere is off the gauge's steps, where the network writes finer ones. */
const strayOffStep = 0.5
/** Amounts that were converted or added up carry their rounding along. */
const roundingMm = 0.0151
/** The same for water that is not rain: a few drops are guessed more often than read. */
const dropsOffStep = 0.3

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
  const steps = stepsOf(report)
  out.push(source('stands', (1 - rate) * steps.asRead * law.mass(y - half, y + half), y - half, y + half))
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
  addDecimals(report, steps, shares, add)
  addUnits(report, steps, shares, add)
  const lost = shares['first-fill-lost'] * steps.asRead
  add('first-fill-lost', lost, y + report.tubeMm - half, y + report.tubeMm + half)
  if (Math.abs(y - report.tubeMm) <= Math.max(half, 0.15))
    add('first-fill-only', shares['first-fill-only'], y + half, 11 * report.tubeMm)
  addTransposed(y, step, shares, add)
  const wetted = shares.wetted * steps.drops * law.dry * wettedShare(y - half, y + half)
  out.push(source('wetted', rate * wetted, -1, 0))
  if (Math.abs(y - report.previousMm) < 0.006) {
    const detail = { kind: 'repeated', earlierDay: 0, earlierMm: y } as const
    out.push(source('repeated', rate * shares.repeated, -1, largestMm, detail))
  }
  const other = Math.log((y + half) / Math.max(y - half, 0.02)) / Math.log(largestMm / half)
  out.push(source('other', rate * shares.other * steps.stray * other, -1, largestMm))
  return out
}

/** How a report's place on or off the gauge's own steps weighs; each is a chance per written amount of one step. */
export interface Steps {
  isOff: boolean
  /** For a report that is what was read off this gauge, whatever it stands for. */
  asRead: number
  /** For drops that are not rain. */
  drops: number
  /** For an amount out of nowhere. */
  stray: number
}

export function stepsOf(report: Pick<ReportSeen, 'amountMm' | 'resolutionMm' | 'writtenMm' | 'offStepChance'>): Steps {
  const { resolutionMm, writtenMm, offStepChance } = report
  const perStep = Math.round(resolutionMm / writtenMm)
  if (perStep <= 1) return { isOff: false, asRead: 1, drops: 1, stray: 1 }
  const isOff = !isNearStep(report.amountMm, resolutionMm, roundingMm)
  const others = perStep - 1
  return isOff
    ? { isOff, asRead: offStepChance / others, drops: dropsOffStep / others, stray: strayOffStep / others }
    : { isOff, asRead: 1 - offStepChance, drops: 1 - dropsOffStep, stray: 1 - strayOffStep }
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

/**
 * Slips by one place are four times as common as by two; up and down alike. What was read is on the gauge's steps; a
 * point moved left may leave digits finer than them, which are kept as far as the network writes them.
 */
function addDecimals(report: ReportSeen, steps: Steps, shares: MistakeShares, add: Add): void {
  const { amountMm, resolutionMm, writtenMm } = report
  for (const places of [1, -1, 2, -2] as const) {
    const factor = 10 ** places
    const trueMm = amountMm / factor
    const share = shares.decimal * (Math.abs(places) === 1 ? 0.4 : 0.1)
    const toleranceMm = Math.max(0.0051, writtenMm / 2 / factor)
    const halfMm = Math.max(resolutionMm / 2, places < 0 ? writtenMm / 2 / factor : 0)
    const fits = isNearStep(trueMm, resolutionMm, toleranceMm) ? 1 : offStep
    // A point moved right gives whole tens of steps: never off them.
    const reaches = places > 0 && steps.isOff ? offStep : 1
    add('decimal', share * fits * reaches, trueMm - halfMm, trueMm + halfMm, { kind: 'decimal', places })
  }
}

function addUnits(report: ReportSeen, steps: Steps, shares: MistakeShares, add: Add): void {
  const { amountMm, resolutionMm, writtenMm } = report
  const inchHalf = Math.max(resolutionMm / 2, (writtenMm / 2) * mmPerInch)
  const share = shares.unit / 2
  const inches = amountMm * mmPerInch
  // Inches typed as millimetres fall on the gauge's own steps only by chance.
  const byChance = steps.isOff ? 1 : Math.min(1, writtenMm / resolutionMm)
  add('unit', share * byChance, inches - inchHalf, inches + inchHalf, { kind: 'unit', measuredIn: 'in' })
  const millimetres = amountMm / mmPerInch
  const half = resolutionMm / 2
  const reaches = steps.isOff ? offStep : 1
  add('unit', share * reaches, millimetres - half, millimetres + half, { kind: 'unit', measuredIn: 'mm' })
}

function isNearStep(amountMm: number, stepMm: number, toleranceMm: number): boolean {
  return Math.abs(amountMm - Math.round(amountMm / stepMm) * stepMm) <= toleranceMm + 1e-9
}

/** Neighbouring digits swapped, in the written millimetres and, for an inch gauge, in hundredths of an inch. */
function addTransposed(y: number, step: number, shares: MistakeShares, add: Add): void {
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
        (shares.transposed / (candidates.size * scales.length)) * (isMultiple(trueMm, step) ? 1 : offStep),
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
