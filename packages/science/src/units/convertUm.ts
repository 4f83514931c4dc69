/**
 * Depths between micrometres, millimetres and inches. 1 in = 25.4 mm exactly, so 0.01 in = 254 µm and 0.1 mm = 100 µm:
 * every amount a gauge can show is a whole number of micrometres. Rounding to a gauge's step is in roundUm.ts.
 * Source: the inch of 1959, as in [NIST2008].
 */
export const umPerMm = 1_000
export const umPerInch = 25_400

export function mmFromUm(amountUm: number): number {
  return amountUm / umPerMm
}

export function inchesFromUm(amountUm: number): number {
  return amountUm / umPerInch
}

/** Nearest whole micrometre, halves away from zero. NaN stays NaN (missing). */
export function umFromMm(amountMm: number): number {
  return wholeUm(amountMm * umPerMm)
}

/** Nearest whole micrometre, halves away from zero. NaN stays NaN (missing). */
export function umFromInches(amountIn: number): number {
  return wholeUm(amountIn * umPerInch)
}

export function mmFromInches(amountIn: number): number {
  return amountIn * 25.4
}

export function inchesFromMm(amountMm: number): number {
  return amountMm / 25.4
}

function wholeUm(um: number): number {
  return um < 0 ? -Math.round(-um) : Math.round(um)
}
