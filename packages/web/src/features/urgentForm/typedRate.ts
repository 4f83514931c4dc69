/** What is typed for rain, snow and stones, and the rate that it makes, worked out while it is typed. */
import { parseAmount, rateMmPerH } from '@gaugewright/science'
import { type Language, type LengthUnit, writeNumber } from './writeNumber.ts'

/** Whole micrometres; null where the text is no amount above zero. A unit written behind the number counts. */
export function typedUm(text: string, unit: LengthUnit): number | null {
  const answer = parseAmount(text, { unit, finer: 'keep', capacityUm: null, confirmed: true })
  return answer.kind === 'amount' && answer.amountUm > 0 ? answer.amountUm : null
}

/** A plain positive number, with either decimal mark; null for anything else. */
export function typedNumber(text: string): number | null {
  const plain = text.trim().replace(',', '.')
  const value = Number(plain)
  return /^\d*\.?\d+$|^\d+\.$/.test(plain) && value > 0 ? value : null
}

/** mm/h; null until both are there. */
export function typedRate(amountUm: number | null, minutes: number | null): number | null {
  return amountUm === null || minutes === null ? null : rateMmPerH(amountUm, minutes)
}

/** `3.20 in/h`, `81 mm/h`: below 10 mm/h with a decimal. */
export function writeRate(mmPerH: number, unit: LengthUnit, language: Language): string {
  if (unit === 'in') return `${writeNumber(mmPerH / 25.4, 2, language)} in/h`
  return `${writeNumber(mmPerH, mmPerH < 10 ? 1 : 0, language)} mm/h`
}

/** `2.0 in/h`, `4.5 cm/h`: new snow is told in centimetres where rain is told in millimetres. */
export function writeSnowRate(mmPerH: number, unit: LengthUnit, language: Language): string {
  return unit === 'in'
    ? `${writeNumber(mmPerH / 25.4, 1, language)} in/h`
    : `${writeNumber(mmPerH / 10, 1, language)} cm/h`
}
