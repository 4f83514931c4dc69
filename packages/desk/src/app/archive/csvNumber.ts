/** Numbers of the two file commands: odds keep six significant digits so that ranking by them loses nothing. */

/** Odds and shares. */
export function odds(share: number): string {
  return Number.isFinite(share) ? String(Number(share.toPrecision(6))) : ''
}

/** Depths in mm, to the micrometre; empty where there is none. */
export function depth(amountMm: number): string {
  return Number.isFinite(amountMm) ? String(Math.round(amountMm * 1000) / 1000) : ''
}
