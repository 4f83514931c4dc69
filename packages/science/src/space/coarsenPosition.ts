/**
 * A position as the public may see it: rounded, so that no house can be told from it. Two decimals of a degree are 1.11 km
 * from north to south, and less from west to east. Rounding, unlike a random shift, gives nothing away when repeated.
 */
interface Position {
  latDeg: number
  lonDeg: number
}

/**
 * @param decimals  of a degree, 0 to 5; two where left out
 * @returns a new position
 * @throws {RangeError} where the number of decimals is not a whole number from 0 to 5
 */
export function coarsenPosition({ latDeg, lonDeg }: Position, decimals = 2): Position {
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > 5) {
    throw new RangeError(`a position has 0 to 5 decimals, not ${decimals}`)
  }
  return { latDeg: rounded(latDeg, decimals), lonDeg: rounded(lonDeg, decimals) }
}

/** By decimal digits, not by powers of two: 1.005 to two decimals is 1.01 however it is stored. Never -0. */
function rounded(deg: number, decimals: number): number {
  const [digits = '0', exponent = '0'] = String(deg).split('e')
  const shifted = Number(`${digits}e${Number(exponent) + decimals}`)
  const whole = Math.sign(shifted) * Math.round(Math.abs(shifted))
  return Number(`${whole}e-${decimals}`) + 0
}
