/**
 * When a site should be looked at again: every two to three years, and after trees have grown or something was built
 * (common practice). Days are counted from 1970-01-01.
 */
export type SurveyDue = 'never surveyed' | 'asked' | 'overdue' | 'due' | 'not yet'

const DUE_AFTER_DAYS = 2 * 365
const OVERDUE_AFTER_DAYS = 3 * 365

/**
 * @param lastDay   day of the latest survey; null where there is none
 * @param askedDay  day on which somebody asked for a new one, by hand or because a gauge drifted; null where nobody did
 */
export function surveyDue(lastDay: number | null, today: number, askedDay: number | null): SurveyDue {
  if (lastDay === null) return 'never surveyed'
  if (today - lastDay > OVERDUE_AFTER_DAYS) return 'overdue'
  if (askedDay !== null && askedDay >= lastDay) return 'asked'
  return today - lastDay > DUE_AFTER_DAYS ? 'due' : 'not yet'
}
