/** The wording of a refusal: where, what was found, what was wanted. */
import { basename } from 'node:path'
import type { Answer } from '../ports/answer.ts'
import { IntakeRefusal } from '../ports/intakeRefusal.ts'

/** Where in a file: the line is counted from 1, the header included. */
export interface Place {
  path: string
  line?: number
  field?: string
}

/** `readings.csv line 14, amount: found "1.2.3", wanted a depth in mm.` */
export function placed(place: Place, found: string, wanted: string): string {
  return `${placeText(place)}: found ${quoted(found)}, wanted ${wanted}.`
}

export function placeText(place: Place): string {
  const line = place.line === undefined ? '' : ` line ${place.line}`
  const field = place.field === undefined ? '' : `, ${place.field}`
  return `${basename(place.path)}${line}${field}`
}

/** Text from a file, safe to print on one line: control characters as escapes, at most 60 characters. */
export function quoted(text: string): string {
  if (text === '') return 'nothing'
  const short = text.length > 60 ? `${text.slice(0, 57)}...` : text
  return JSON.stringify(short)
}

/** Run a reader; a refusal becomes a problem, anything else is a fault of ours and passes on. */
export async function guarded<T>(read: () => Promise<T>): Promise<Answer<T>> {
  try {
    return { ok: true, value: await read() }
  } catch (error) {
    if (error instanceof IntakeRefusal) return { ok: false, problem: error.problem }
    throw error
  }
}
