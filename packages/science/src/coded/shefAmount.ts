/** Depths of water in SHEF, exact, and the whole days that a value covers. [SHEF2012] 5.1.2, Table 1. */
import { msPerDay } from '../reading/instant.ts'
import type { Amount } from '../reading/reading.ts'
import type { ShefDatum, ShefValue } from './shef.ts'

const UM_PER_INCH = 25_400
const UM_PER_MM = 1_000

/** Whole micrometres of a value of PP or PC in inches or millimetres; null where it is missing, negative or no depth. */
export function shefAmount({ datum, units, code }: Pick<ShefValue, 'datum' | 'units' | 'code'>): Amount | null {
  if (datum.kind === 'trace') return { amountUm: 0, isTrace: true }
  if (datum.kind === 'missing' || !/^P[PC]/.test(code) || datum.value < 0) return null
  const [whole = '', fraction = ''] = datum.text.replace('+', '').split('.')
  const digits = datum.text.includes('.') ? fraction.length : 2
  const amountUm = Math.round(
    (Number(whole + fraction) * (units === 'metric' ? UM_PER_MM : UM_PER_INCH)) / 10 ** digits,
  )
  return Number.isSafeInteger(amountUm) ? { amountUm, isTrace: false } : null
}

/** Inches to hundredths where that is exact, else to six decimals; millimetres to what they need. Reads back exactly. */
export function shefDepth({ amountUm, isTrace }: Amount, units: 'english' | 'metric'): ShefDatum {
  if (isTrace) return { kind: 'trace' }
  const text = units === 'metric' ? metricText(amountUm) : inchText(amountUm)
  return { kind: 'number', value: Number(text), text }
}

function metricText(amountUm: number): string {
  return (amountUm / UM_PER_MM).toFixed(3).replace(/0{1,2}$/, '')
}

function inchText(amountUm: number): string {
  return amountUm % 254 === 0 ? (amountUm / UM_PER_INCH).toFixed(2) : (amountUm / UM_PER_INCH).toFixed(6)
}

/** Days of 24 h that a value covers, or null where its duration is no whole number of them. */
export function shefWholeDays(
  value: Pick<ShefValue, 'code' | 'variable' | 'sinceUtcMs' | 'observedAtUtcMs'>,
): number | null {
  const letter = value.code[2]
  if (letter === 'D') return 1
  if (letter === 'W') return 7
  if (letter === 'P' && value.sinceUtcMs !== null) {
    // 23 or 25 hours where the clocks changed: still from one 07:00 to the next.
    const days = (value.observedAtUtcMs - value.sinceUtcMs) / msPerDay
    return Math.abs(days - 1) < 0.05 ? 1 : null
  }
  if (letter !== 'V' || value.variable === null) return null
  const { unit, count } = value.variable
  if (unit === 'D') return count
  return unit === 'H' && count % 24 === 0 ? count / 24 : null
}
