/**
 * Habits: statistical signs in one gauge's readings, for the coordinator to know and perhaps to talk about. Each comes
 * with its size, how sure it is, and how many readings it rests on. None of them is a fault of any single reading.
 */

/** In the order of lists where nothing else decides. */
export const habitKinds = [
  'dated',
  'shifting',
  'carried',
  'fives',
  'tens',
  'coarse',
  'off-steps',
  'few-light',
  'fits-poorly',
  'mistaken',
] as const

/**
 * What `value`, `low`, `high` and `usual` of a habit are.
 * - dated: days by which its window runs ahead of the network's; below 0 it reports an earlier day's rain
 * - shifting, carried, mistaken: rate against the network's (1 is usual) of rain dated a day off now and then, of totals
 *   over days that were not declared, of single-day mistakes
 * - fives, tens: share of its amounts that are rounded to multiples of 5, or of 10, of its steps, told apart
 * - coarse: step it is read to, mm
 * - off-steps: share of its wet readings between its own steps
 * - few-light: light amounts it reports against what gauges around report on the same days (1 is usual)
 * - fits-poorly: factor on its correlation with the gauges around, beyond what distance says
 */
export type HabitKind = (typeof habitKinds)[number]

export interface Habit {
  kind: HabitKind
  value: number
  /** Central 80 % of what it may be in truth. */
  low: number
  high: number
  /** The middle gauge of the network. */
  usual: number
  /** Chance that it is strong enough to matter. */
  sure: number
  /** Sure enough to be told. */
  isHabit: boolean
  /** 0 to 1: how sure times how large; lists put the strongest first. */
  strength: number
  /** Readings (or days) it rests on. */
  readings: number
}

/** Chance from which a habit is told. */
export const sureEnough = 0.9

export interface HabitSeen extends Omit<Habit, 'isHabit' | 'strength' | 'usual'> {
  /** 0 to 1: how far from usual it is, were it sure. */
  size: number
}
