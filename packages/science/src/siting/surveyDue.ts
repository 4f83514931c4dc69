/**
 * When a site should be looked at again: every two to three years, and after trees have grown or something was built
 * (common practice). Days are counted from 1970-01-01.
 */
export type SurveyDue = 'never surveyed' | 'asked' | 'overdue' | 'due' | 'not yet'

const DUE_AFTER_DAYS = 2 * 365
const OVERDUE_AFTER_DAYS = 3 * 365

/**
 * @param lastDay  day of the latest survey; null where there is none
 * @param isAsked  somebody asked for a new one since, by hand or because a gauge drifted
 */
export function surveyDue(lastDay: number | null, today: number, isAsked: boolean): SurveyDue {
  if (isAsked) return 'asked'
  if (lastDay === null) return 'never surveyed'
  if (today - lastDay > OVERDUE_AFTER_DAYS) return 'overdue'
  return today - lastDay > DUE_AFTER_DAYS ? 'due' : 'not yet'
}
