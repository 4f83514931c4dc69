/** Who does something about an urgent report: the name shown, and the person behind it where known. */
export interface UrgentDoer {
  by: string
  byPersonId: string | null
}
