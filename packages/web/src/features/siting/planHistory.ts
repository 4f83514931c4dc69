/** Steps of drawing that can be taken back, one after the other: pure. Steps of one drag are one. */
import type { YardPlan } from '@gaugewright/science'

export interface PlanHistory {
  past: readonly YardPlan[]
  plan: YardPlan
  future: readonly YardPlan[]
  /** Names the drag or the field that the last step belongs to. */
  stroke: string | null
}

export type PlanStep =
  | { kind: 'set'; plan: YardPlan; stroke?: string }
  | { kind: 'undo' }
  | { kind: 'redo' }
  | { kind: 'load'; plan: YardPlan }
  | { kind: 'end stroke' }

const MOST_STEPS = 200

export function newHistory(plan: YardPlan): PlanHistory {
  return { past: [], plan, future: [], stroke: null }
}

export function stepHistory(history: PlanHistory, step: PlanStep): PlanHistory {
  const { past, plan, future } = history
  switch (step.kind) {
    case 'set': {
      if (step.plan === plan) return history
      const isSameStroke = step.stroke !== undefined && step.stroke === history.stroke
      const kept = isSameStroke ? past : [...past.slice(-MOST_STEPS), plan]
      return { past: kept, plan: step.plan, future: [], stroke: step.stroke ?? null }
    }
    case 'end stroke':
      return { ...history, stroke: null }
    case 'undo': {
      const before = past.at(-1)
      if (before === undefined) return history
      return { past: past.slice(0, -1), plan: before, future: [plan, ...future], stroke: null }
    }
    case 'redo': {
      const [after, ...rest] = future
      if (after === undefined) return history
      return { past: [...past, plan], plan: after, future: rest, stroke: null }
    }
    case 'load':
      return { past: [...past, plan], plan: step.plan, future: [], stroke: null }
  }
}
