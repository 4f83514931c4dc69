import { epochDayFromIso, isDrawn, type SurveyDue, surveyDue } from '@gaugewright/science'
import type { JournalEntry } from '../../ports/journal.ts'
import { standing } from '../people/journalBody.ts'

/** When a site is to be looked at again, from what the journal holds about it. */
export function dueOf(
  entries: readonly JournalEntry[],
  today: string,
): { due: SurveyDue; surveyedOn: string | null; why: string } {
  const surveys = standing(entries, 'survey').filter(({ body }) => isDrawn(body.plan))
  const surveyedOn =
    surveys
      .map(({ body }) => body.surveyedOn)
      .sort()
      .at(-1) ?? null
  const asked = standing(entries, 'survey asked').at(-1)
  const askedAt = asked === undefined ? -1 : entries.indexOf(asked.entry)
  // Answered by a survey saved after it, unless that tells of a day before it.
  const isAnswered = surveys.some(
    ({ entry, body }) => entries.indexOf(entry) > askedAt && body.surveyedOn >= (asked?.entry.atUtc.slice(0, 10) ?? ''),
  )
  const isAsked = asked !== undefined && !isAnswered
  const due = surveyDue(surveyedOn === null ? null : epochDayFromIso(surveyedOn), epochDayFromIso(today), isAsked)
  return { due, surveyedOn, why: due === 'asked' ? (asked?.body.why ?? '') : '' }
}
