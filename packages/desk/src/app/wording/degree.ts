/** Odds in the calibrated terms of [Mastrandrea2010], the same steps as on the screens. */
export type Degree =
  | 'certain'
  | 'very likely'
  | 'likely'
  | 'even'
  | 'unlikely'
  | 'very unlikely'
  /** The likeliest of several explanations, none of which is likely. */
  | 'first of many'

/** @param isFirst  of the likeliest explanation of a finding */
export function degreeOf(odds: number, isFirst = false): Degree {
  if (odds > 0.99) return 'certain'
  if (odds > 0.9) return 'very likely'
  if (odds > 0.66) return 'likely'
  if (odds >= 0.33) return 'even'
  if (isFirst) return 'first of many'
  if (odds >= 0.1) return 'unlikely'
  return 'very unlikely'
}
