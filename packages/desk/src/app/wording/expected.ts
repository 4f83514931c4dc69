/** What was expected, in the form in which it is said: a dry day, a little at most, or an amount with its range. */
import type { Unit } from '@gaugewright/science'
import { aboutValue } from './figures.ts'

/** `low` to `high` holds 80 %, which the calibrated terms call likely. mm; each is said to two figures. */
export type Expected =
  | { form: 'dry'; dryChance: number }
  | { form: 'little'; highMm: number; dryChance: number }
  | { form: 'amount'; lowMm: number; midMm: number; highMm: number; dryChance: number }

export interface ExpectedRange {
  lowMm: number
  midMm: number
  highMm: number
  dryChance: number
}

/** `far`: outside what would be seen 98 times in 100. */
export type Place = 'far below' | 'below' | 'within' | 'above' | 'far above'

export function expectedForm({ lowMm, midMm, highMm, dryChance }: ExpectedRange, unit: Unit): Expected {
  if (aboutValue(highMm, unit) === 0) return { form: 'dry', dryChance }
  if (aboutValue(midMm, unit) === 0) return { form: 'little', highMm, dryChance }
  return { form: 'amount', lowMm, midMm, highMm, dryChance }
}

/** Whether the amounts of two expectations are said with the same figures. */
export function isSaidAlike(a: Expected, b: Expected, unit: Unit): boolean {
  const figures = (one: Expected): number[] =>
    one.form === 'dry' ? [] : one.form === 'little' ? [one.highMm] : [one.lowMm, one.midMm, one.highMm]
  const said = (one: Expected): string => [one.form, ...figures(one).map((mm) => aboutValue(mm, unit))].join(' ')
  return said(a) === said(b)
}

/** Below this chance of a dry day a zero is said to be less than expected, although the range may begin at nothing. */
const leastDryChance = 0.2

/** A few drops are never far more than a dry day. */
const LEAST_FAR_MM = 2

/** Where an amount lies, by the figures that are said, so that words and figures agree. */
export function placeOf(
  amountMm: number,
  range: ExpectedRange & { leastMm: number; mostMm: number },
  unit: Unit,
): Place {
  const value = aboutValue(amountMm, unit)
  if (value > aboutValue(range.highMm, unit))
    return amountMm > range.mostMm && amountMm >= LEAST_FAR_MM ? 'far above' : 'above'
  if (value < aboutValue(range.lowMm, unit)) return amountMm < range.leastMm ? 'far below' : 'below'
  return amountMm <= 0 && range.dryChance < leastDryChance ? 'below' : 'within'
}
