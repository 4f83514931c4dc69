/**
 * How an observer has answered over time: share of mornings, streaks, gaps. A total over several days answers all of them; a
 * morning announced as away is not expected, and neither breaks a streak nor lengthens it.
 */
export const answerStates = ['not expected', 'answered', 'covered', 'away', 'silent'] as const
export type AnswerState = (typeof answerStates)[number]

export interface RollOverTime {
  /** Of expected mornings; null where none was. */
  answeredShare: number | null
  expected: number
  answered: number
  /** Mornings answered in a row up to the last expected one, and the longest such run. */
  currentStreak: number
  longestStreak: number
  /** Runs of silence, longest first: places of the first day and lengths. */
  gaps: { from: number; days: number }[]
}

/** @param states  one for each day, oldest first */
export function rollOverTime(states: readonly AnswerState[]): RollOverTime {
  let expected = 0
  let answered = 0
  let streak = 0
  let longestStreak = 0
  const gaps: RollOverTime['gaps'] = []
  let gap: RollOverTime['gaps'][number] | null = null
  for (const [day, state] of states.entries()) {
    if (state === 'away' || state === 'not expected') continue
    expected++
    if (state === 'silent') {
      streak = 0
      if (gap === null) {
        gap = { from: day, days: 1 }
        gaps.push(gap)
      } else gap.days = day - gap.from + 1
    } else {
      answered++
      streak++
      gap = null
      longestStreak = Math.max(longestStreak, streak)
    }
  }
  gaps.sort((a, b) => b.days - a.days || b.from - a.from)
  return {
    answeredShare: expected === 0 ? null : answered / expected,
    expected,
    answered,
    currentStreak: streak,
    longestStreak,
    gaps,
  }
}
