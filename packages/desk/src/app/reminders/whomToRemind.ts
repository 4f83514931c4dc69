/**
 * Whom to remind: those who have not read, each at most once for a day, never while away, never when they said stop. Pure:
 * the roll and all that was said before come in.
 */
import type { LeftOutReason, RollRow } from '@gaugewright/contract'

export interface RemindablePerson {
  personId: string
  name: string
  language: 'en' | 'es'
  /** Null where the person has no mail address. */
  mail: string | null
  /** Ids of the gauges that the person reads. */
  gauges: readonly string[]
}

export interface RemindAsk {
  /** Of the day: every gauge expected, and its answer. */
  roll: readonly Pick<RollRow, 'gaugeId' | 'code' | 'name' | 'answer'>[]
  people: readonly RemindablePerson[]
  /** What each person chose; those who chose nothing are reminded by mail. */
  choices: ReadonlyMap<string, { wants: boolean; way: 'mail' | 'text'; phone: string | null }>
  /** Ids of those who were reminded for this day already. */
  reminded: ReadonlySet<string>
}

export interface Reminder {
  person: RemindablePerson
  way: 'mail' | 'text'
  /** Mail address or phone number. */
  to: string
  /** Those not read, by code. */
  gauges: readonly { gaugeId: string; code: string; name: string }[]
}

export interface WhomToRemind {
  remind: Reminder[]
  leftOut: { person: RemindablePerson; why: LeftOutReason }[]
}

/** Persons who read no gauge that is expected on the day are in neither list. Both are in the order of `people`. */
export function whomToRemind({ roll, people, choices, reminded }: RemindAsk): WhomToRemind {
  const rowOf = new Map(roll.map((row) => [row.gaugeId, row]))
  const answer: WhomToRemind = { remind: [], leftOut: [] }
  for (const person of people) {
    const rows = person.gauges.map((gaugeId) => rowOf.get(gaugeId)).filter((row) => row !== undefined)
    if (rows.length === 0) continue
    const silent = rows.filter((row) => row.answer === 'silent')
    const choice = choices.get(person.personId)
    const way = choice?.way === 'text' && choice.phone !== null ? 'text' : 'mail'
    const to = way === 'text' ? (choice?.phone ?? null) : person.mail
    const why = whyNot(rows, silent.length, choice?.wants ?? true, reminded.has(person.personId), to)
    if (why !== null || to === null) {
      answer.leftOut.push({ person, why: why ?? 'no address' })
      continue
    }
    const gauges = silent.map(({ gaugeId, code, name }) => ({ gaugeId, code, name }))
    gauges.sort((one, other) => (one.code < other.code ? -1 : one.code > other.code ? 1 : 0))
    answer.remind.push({ person, way, to, gauges })
  }
  return answer
}

function whyNot(
  rows: readonly { answer: RollRow['answer'] }[],
  silent: number,
  wants: boolean,
  wasReminded: boolean,
  to: string | null,
): LeftOutReason | null {
  // Somebody who is away from one gauge is away: the others are left in peace too.
  if (rows.some((row) => row.answer === 'away')) return 'away'
  if (silent === 0) return rows.some((row) => row.answer === 'multi-day open') ? 'total open' : 'read'
  if (!wants) return 'stopped'
  if (wasReminded) return 'reminded already'
  return to === null ? 'no address' : null
}
