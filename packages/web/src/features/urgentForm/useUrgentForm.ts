import type { Problem, UrgentForm } from '@gaugewright/contract'
import { useEffect, useState } from 'react'
import { ProblemError } from '../../api/problemError.ts'
import { askUrgentForm } from '../../api/urgentForm/urgentFormQuery.ts'
import { keptForm } from '../../api/urgentForm/urgentStore.ts'

export interface FormState {
  /** What the phone keeps, until the desk has answered; null where there is neither. */
  form: UrgentForm | null
  /** Why the desk did not answer; null while it is asked and once it has. */
  problem: Problem | null
}

/** Whose gauge it is and whom to call: from the phone at once, from the desk when it answers. */
export function useUrgentForm(gauge: string): FormState {
  const [state, setState] = useState<FormState>({ form: null, problem: null })
  useEffect(() => {
    let isGone = false
    const change = (next: (before: FormState) => FormState) => {
      if (!isGone) setState(next)
    }
    keptForm(gauge)
      .then((kept) => change((before) => ({ ...before, form: before.form ?? kept ?? null })))
      .catch(() => undefined)
    askUrgentForm(gauge)
      .then((form) => change(() => ({ form, problem: null })))
      .catch((error: unknown) => {
        const problem =
          error instanceof ProblemError ? error.problem : { code: 'SCREEN_FAILED', seen: String(error), advice: '' }
        change((before) => ({ ...before, problem }))
      })
    return () => {
      isGone = true
    }
  }, [gauge])
  return state
}
