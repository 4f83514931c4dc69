/**
 * Amounts as archives keep them: whole tenths of a millimetre. An amount read in hundredths of an inch survives the
 * trip there and back, because its step (0.254 mm) is wider than a tenth. Source of the layout: [Menne2012].
 */
import { resolutionsUm, roundUm } from './roundUm.ts'

/** Nearest whole tenth of a millimetre, halves up. 0.25 in = 6.35 mm gives 64. @throws {ScienceError} OUT_OF_DOMAIN */
export function tenthsMmFromUm(amountUm: number): number {
  return roundUm(amountUm, resolutionsUm.tenthMm) / resolutionsUm.tenthMm
}

export function umFromTenthsMm(tenthsMm: number): number {
  return tenthsMm * resolutionsUm.tenthMm
}

/**
 * The amount in whole hundredths of an inch that was rounded to these tenths of a millimetre, or `null` where none was
 * (1, 4, 6, … tenths cannot come from a gauge that reads hundredths of an inch).
 */
export function hundredthInchUmFromTenthsMm(tenthsMm: number): number | null {
  return hundredthInchUmFromMm(umFromTenthsMm(tenthsMm), 1)
}

/**
 * The amount in whole hundredths of an inch that was rounded to this millimetre figure, or `null` where none was.
 * Figures with no decimal count as having one, since programs drop a last zero (5.00 in = 127.0 mm, written 127).
 * Either way of rounding a half is understood.
 * @param writtenUm the figure as written, in whole micrometres
 * @param decimals  digits after its decimal mark
 */
export function hundredthInchUmFromMm(writtenUm: number, decimals: number): number | null {
  const halfStepUm = decimals <= 1 ? 50 : decimals === 2 ? 5 : 0.5
  const candidateUm = Math.round(writtenUm / resolutionsUm.hundredthInch) * resolutionsUm.hundredthInch
  return Math.abs(candidateUm - writtenUm) <= halfStepUm ? candidateUm : null
}
