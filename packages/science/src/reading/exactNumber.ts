/**
 * A number as written, exactly: a fraction of whole numbers of any size, so that `0.07` is 7/100 and no rounding
 * happens before the gauge's own step is known. Used where typed text becomes an amount, nowhere else.
 */
export interface ExactNumber {
  numerator: bigint
  /** Above 0. */
  denominator: bigint
  /** Digits written behind the decimal mark. */
  decimals: number
}

/** `whole` and `decimals` are strings of ASCII digits; either may be empty. */
export function exactFromDigits(whole: string, decimals: string): ExactNumber {
  return {
    numerator: BigInt(`0${whole}${decimals}`),
    denominator: 10n ** BigInt(decimals.length),
    decimals: decimals.length,
  }
}

/** n/d, or `null` where it has no end as a decimal (1/3) or d is 0. */
export function exactFromFraction(numerator: bigint, denominator: bigint): ExactNumber | null {
  if (denominator === 0n) return null
  for (let decimals = 0; decimals <= 10; decimals++) {
    const power = 10n ** BigInt(decimals)
    if ((numerator * power) % denominator === 0n) {
      return { numerator: (numerator * power) / denominator, denominator: power, decimals }
    }
  }
  return null
}

/** The number times a whole number, when that is whole and safe; otherwise `null`. */
export function wholeTimes(number: ExactNumber, factor: number): number | null {
  const product = number.numerator * BigInt(factor)
  if (product % number.denominator !== 0n) return null
  const whole = Number(product / number.denominator)
  return Number.isSafeInteger(whole) ? whole : null
}

/** The number times a whole number, as a floating figure: for comparing with limits, not for keeping. */
export function roughlyTimes(number: ExactNumber, factor: number): number {
  const product = number.numerator * BigInt(factor)
  const whole = product / number.denominator
  return Number(whole) + Number(product - whole * number.denominator) / Number(number.denominator)
}
