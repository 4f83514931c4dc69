/** The decisions that a what-if supposes, in the form in which a person would make them. Nothing is stored. */
import type { WhatIfAsk } from '@gaugewright/contract'
import type { Decision, Reading } from '@gaugewright/science'
import { amendedProblem } from './amendedProblem.ts'
import { type Answer, answered, refused } from './answer.ts'
import type { Morning } from './morning/loadMorning.ts'

export function supposedDecisions(morning: Morning, changes: WhatIfAsk['changes']): Answer<Decision[]> {
  const decisions: Decision[] = []
  for (const change of changes) {
    const reading = morning.readings.find((row) => row.id === change.readingId)
    if (reading === undefined) {
      return refused(
        'READING_UNKNOWN',
        `no reading ${change.readingId} around ${morning.day}`,
        'Open the day again; the list shows every reading there is.',
      )
    }
    const verdict = verdictOf(reading, change)
    const problem = verdict.amended === null ? null : amendedProblem(verdict.amended, reading)
    if (problem !== null) return problem
    decisions.push({
      ...verdict,
      id: `supposed ${reading.id}`,
      readingId: reading.id,
      by: { kind: 'person', name: '' },
      reason: '',
      decidedAtUtc: '',
      undoes: null,
    })
  }
  return answered(decisions)
}

/** Set aside without an amount; let stand with the amount and days as reported; amended with any other. */
function verdictOf(reading: Reading, change: WhatIfAsk['changes'][number]): Pick<Decision, 'verdict' | 'amended'> {
  const { amountUm, isTrace } = change
  if (amountUm === null) return { verdict: 'set aside', amended: null }
  const firstDay = change.firstDay ?? reading.firstDay
  const lastDay = change.lastDay ?? reading.lastDay
  const isSameDays = firstDay === reading.firstDay && lastDay === reading.lastDay
  if (isSameDays && amountUm === reading.amountUm && isTrace === reading.isTrace) {
    return { verdict: 'stands', amended: null }
  }
  return { verdict: 'amended', amended: { amountUm, isTrace, firstDay, lastDay } }
}
