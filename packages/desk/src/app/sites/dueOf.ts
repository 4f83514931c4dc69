import { epochDayFromIso, type SurveyDue, surveyDue } from '@gaugewright/science'
import type { JournalEntry } from '../../ports/journal.ts'
import { standing } from '../people/journalBody.ts'

/** When a site is to be looked at again, from what the journal holds about it. */
export function dueOf(
  entries: readonly JournalEntry[],
  today: string,
): { due: SurveyDue; surveyedOn: string | null; why: string } {
  const days = standing(entries, 'survey').map(({ body }) => body.surveyedOn)
  const surveyedOn = days.sort().at(-1) ?? null
  const asked = standing(entries, 'survey asked').at(-1)
  const askedDay = asked === undefined ? null : epochDayFromIso(asked.entry.atUtc.slice(0, 10))
  const due = surveyDue(surveyedOn === null ? null : epochDayFromIso(surveyedOn), epochDayFromIso(today), askedDay)
  return { due, surveyedOn, why: due === 'asked' ? (asked?.body.why ?? '') : '' }
}
