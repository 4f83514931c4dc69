/** Reading what is typed into the amend editor. The full reading of observers' text is the desk's; this one asks back. */
import type { Unit } from '../../words/format.ts'

export type TypedAmount =
  | { ok: true; amountUm: number; isTrace: boolean }
  | { ok: false; why: 'notAmount' | 'unclear' | 'tooLarge' }

const umPerStep = { in: 254, mm: 100 } as const
const stepsPerUnit = { in: 100, mm: 10 } as const
/** The largest amount ever measured in 24 hours, rounded up: 1825 mm, Foc-Foc 1966 [WMOExtremes]. */
export const largestDailyUm = 1_900_000

/** Whole micrometres from typed digits, rounded to the step of the unit (0.01 in, 0.1 mm); T or "trace" is a trace. */
export function readTypedAmount(text: string, unit: Unit): TypedAmount {
  const typed = text
    .trim()
    .toLowerCase()
    .replace(/\s*(in|mm|″|")$/, '')
  if (['t', 'tr', 'trace', 'ip', 'inapreciable'].includes(typed)) return { ok: true, amountUm: 0, isTrace: true }
  if (!/^(\d+([.,]\d*)?|[.,]\d+)$/.test(typed)) return { ok: false, why: 'notAmount' }
  if (/^[1-9]\d*[.,]\d{3}$/.test(typed)) return { ok: false, why: 'unclear' }
  const amountUm = Math.round(Number(typed.replace(',', '.')) * stepsPerUnit[unit]) * umPerStep[unit]
  return amountUm > largestDailyUm ? { ok: false, why: 'tooLarge' } : { ok: true, amountUm, isTrace: false }
}
