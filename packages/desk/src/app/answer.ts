/** How a use case answers: see ports/answer.ts. */
import type { Problem } from '@gaugewright/contract'
import type { Answer } from '../ports/answer.ts'

export type { Answer } from '../ports/answer.ts'

export function answered<T>(value: T): Answer<T> {
  return { ok: true, value }
}

export function refused(code: string, seen: string, advice: string): { ok: false; problem: Problem } {
  return { ok: false, problem: { code, seen, advice } }
}
