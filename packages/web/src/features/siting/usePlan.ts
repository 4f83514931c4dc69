import type { YardPlan } from '@gaugewright/science'
import { useEffect, useReducer } from 'react'
import { newHistory, stepHistory } from './planHistory.ts'
import { emptyPlan, samePlan } from './planItems.ts'

export type EditedPlan = ReturnType<typeof usePlan>

/** The plan being drawn. Unsaved drawing outlives a reload: it lies in this browser, under the key of the site. */
export function usePlan(draftKey: string, saved: YardPlan | null) {
  const key = `gaugewright.yard.${draftKey}`
  const [history, step] = useReducer(stepHistory, null, () => newHistory(draftOf(key) ?? saved ?? emptyPlan))
  const { plan } = history
  const isChanged = !samePlan(plan, saved ?? emptyPlan)
  useEffect(() => {
    try {
      if (isChanged) localStorage.setItem(key, JSON.stringify(plan))
      else localStorage.removeItem(key)
    } catch {
      // A full or closed store: the plan stays in the page.
    }
  }, [key, plan, isChanged])
  return {
    plan,
    isChanged,
    set: (next: YardPlan, stroke?: string) =>
      step({ kind: 'set', plan: next, ...(stroke !== undefined && { stroke }) }),
    endStroke: () => step({ kind: 'end stroke' }),
    load: (next: YardPlan) => step({ kind: 'load', plan: next }),
    undo: () => step({ kind: 'undo' }),
    redo: () => step({ kind: 'redo' }),
    canUndo: history.past.length > 0,
    canRedo: history.future.length > 0,
  }
}

function draftOf(key: string): YardPlan | null {
  try {
    const text = localStorage.getItem(key)
    const draft = text === null ? null : (JSON.parse(text) as YardPlan)
    return Array.isArray(draft?.outline) && Array.isArray(draft.obstacles) && Array.isArray(draft.hazards)
      ? draft
      : null
  } catch {
    return null
  }
}
