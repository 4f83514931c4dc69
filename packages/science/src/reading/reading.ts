/**
 * A reading and the decisions made about it: the words every layer shares. Depths are whole micrometres, so that sums
 * are exact in either unit (0.01 in = 254 µm, 0.1 mm = 100 µm). Kernels take millimetres; they convert at their edge.
 */
import type { Mistake } from '../mistakes/mistake.ts'

export type Unit = 'mm' | 'in'

/** ISO calendar date, e.g. `2026-03-29`: the day on which an observing day ends, in the network's time zone. */
export type IsoDay = string

/** A depth of water. A trace is wet, but below what the gauge resolves: `amountUm` 0 and `isTrace` true. */
export interface Amount {
  amountUm: number
  isTrace: boolean
}

export type ReadingKind = 'daily' | 'multiday'

/** An amount caught over an interval: after its start, up to and including its end. Never changed once stored. */
export interface Reading extends Amount {
  id: string
  gaugeId: string
  kind: ReadingKind
  /** First and last observing day that the amount covers; equal for a daily reading. */
  firstDay: IsoDay
  lastDay: IsoDay
  /** The real interval, as instants (RFC 3339, UTC). */
  startsAtUtc: string
  endsAtUtc: string
  /** What the observer typed, untouched, and the unit it was typed in. */
  text: string
  unit: Unit
  remark: string | null
  receivedAtUtc: string
  door: Door
  /** The reading this one corrects, when the observer corrects their own. */
  supersedes: string | null
  /** Absent where nobody was asked back at entry. */
  confirmed?: Confirmed
}

/** At entry the observer was asked back about these mistakes, looked at the gauge again, and then gave this amount. */
export interface Confirmed {
  about: readonly Mistake[]
  /** What stood there first; the same as the reading's text where it was kept. */
  firstText: string
}

/** The way a reading came in. */
export type Door = 'import' | 'desk' | 'phone' | 'machine' | 'demo'

export type Verdict = 'stands' | 'amended' | 'asked' | 'set aside'

/** A decision stands beside a reading; it never changes it. Undoing appends another decision that names this one. */
export interface Decision {
  id: string
  readingId: string
  verdict: Verdict
  /** For `amended`: what the gauge is taken to have caught, and over which days. */
  amended: (Amount & { firstDay: IsoDay; lastDay: IsoDay }) | null
  /** `personId`: of a person who was signed in. Once such a person is forgotten, the name is empty and the id gone. */
  by: { kind: 'person'; name: string; personId?: string } | { kind: 'rule'; rule: string }
  reason: string
  /** The likeliest mistake that the finding named to the person who decided; absent where none was named. */
  mistake?: Mistake
  decidedAtUtc: string
  /** Set when this row only takes an earlier decision back. */
  undoes: string | null
}
