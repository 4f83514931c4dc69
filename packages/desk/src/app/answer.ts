/** What every use case answers: a value, or a problem that a person can mend. Nothing expected is thrown. */
import type { Problem } from '@gaugewright/contract'

export type Answer<T> = { ok: true; value: T } | { ok: false; problem: Problem }

export function answered<T>(value: T): Answer<T> {
  return { ok: true, value }
}

export function refused(code: string, seen: string, advice: string): { ok: false; problem: Problem } {
  return { ok: false, problem: { code, seen, advice } }
}
