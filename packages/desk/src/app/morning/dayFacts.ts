/** The day in one line: how many answered and how, how many wait for a decision, how many were wet. */
import type { DocketRow, RollRow } from '@gaugewright/contract'

export interface DayFacts {
  expected: number
  read: number
  late: number
  multiDayOpen: number
  away: number
  silent: number
  toDecide: number
  decided: number
  wet: number
  largestUm: number | null
  largestGauge: string | null
}

/**
 * Wet and largest look at single days as accepted: a total over several days, a set-aside reading and a reading still
 * on the docket are not the day's largest.
 */
export function dayFacts(roll: readonly RollRow[], docket: readonly DocketRow[]): DayFacts {
  const facts: DayFacts = {
    expected: roll.length,
    read: 0,
    late: 0,
    multiDayOpen: 0,
    away: 0,
    silent: 0,
    toDecide: docket.filter((row) => row.decision === null).length,
    decided: 0,
    wet: 0,
    largestUm: null,
    largestGauge: null,
  }
  const doubted = new Set(docket.map((row) => row.readingId))
  for (const row of roll) {
    facts[counterOf(row.answer)] += 1
    if (row.decision?.by.kind === 'person' && row.decision.verdict !== 'asked') facts.decided += 1
    if (row.acceptedUm === null || row.spanDays > 1 || (row.readingId !== null && doubted.has(row.readingId))) continue
    const amended = row.decision?.amended ?? null
    if (row.acceptedUm > 0 || (amended === null ? row.isTrace : amended.isTrace)) facts.wet += 1
    if (row.acceptedUm > 0 && (facts.largestUm === null || row.acceptedUm > facts.largestUm)) {
      facts.largestUm = row.acceptedUm
      facts.largestGauge = row.name
    }
  }
  return facts
}

function counterOf(answer: RollRow['answer']): 'read' | 'late' | 'multiDayOpen' | 'away' | 'silent' {
  switch (answer) {
    case 'read':
      return 'read'
    case 'read late':
      return 'late'
    case 'multi-day open':
      return 'multiDayOpen'
    case 'away':
      return 'away'
    case 'silent':
      return 'silent'
  }
}
