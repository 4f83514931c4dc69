/**
 * What persons decided about past readings, counted by gauge for the model. Only readings of times in which somebody
 * was deciding count as passed: the years of an imported archive that nobody looked through say nothing.
 */
import {
  type DecidedCounts,
  type Decision,
  epochDayFromIso,
  type IsoDay,
  isoFromEpochDay,
  type Mistake,
} from '@gaugewright/science'
import type { Ledger, ReadingAmount } from '../../ports/ledger.ts'
import { decisionsInForce } from '../morning/decisionsInForce.ts'

/** Observers change: decisions of about the last year count, of fewer days where the network is very large. */
const MOST_DAYS = 400
const MOST_READINGS = 2_000_000
/** A day counts as looked at when a person decided about a reading within this many days of it. */
const NEAR_DAYS = 7
const ROWS_BETWEEN_PAUSES = 20_000

export interface DecidedCountsAsk {
  networkId: string
  /** Column of each gauge id. */
  indexOf: ReadonlyMap<string, number>
  firstDay: IsoDay
  /** Newest day that counts. */
  untilDay: IsoDay
  signal?: AbortSignal
}

/** @returns null where no person has decided about a reading of these days */
export async function decidedCounts(ledger: Ledger, ask: DecidedCountsAsk): Promise<DecidedCounts | null> {
  const until = epochDayFromIso(ask.untilDay)
  const reach = Math.min(MOST_DAYS, Math.max(60, Math.floor(MOST_READINGS / Math.max(1, ask.indexOf.size))))
  const first = Math.max(epochDayFromIso(ask.firstDay), until - reach + 1)
  if (first > until) return null
  const fromDay = isoFromEpochDay(first)
  const byPerson = new Map<string, Decision>()
  for (const [id, decision] of decisionsInForce(await ledger.decisions(ask.networkId, fromDay, ask.untilDay)))
    if (decision.by.kind === 'person') byPerson.set(id, decision)
  if (byPerson.size === 0) return null
  const tally = new Tally(ask.indexOf, first, until - first + 1)
  let rows = 0
  for await (const reading of ledger.readingAmounts(ask.networkId, fromDay, ask.untilDay)) {
    if (++rows % ROWS_BETWEEN_PAUSES === 0) {
      await new Promise((resume) => setImmediate(resume))
      ask.signal?.throwIfAborted()
    }
    tally.add(reading, byPerson.get(reading.readingId))
  }
  return tally.counts()
}

/** A mistake that runs over neighbouring days of one gauge (a wrong date, a silent total) is one mistake. */
const runningMistakes: ReadonlySet<Mistake> = new Set<Mistake>(['day', 'carried'])

class Tally {
  readonly #indexOf: ReadonlyMap<string, number>
  readonly #firstDay: number
  readonly #readings: Uint8Array
  readonly #lookedAt: Uint8Array
  readonly #mistaken: Float64Array
  readonly #standing: Float64Array
  readonly #named: Partial<Record<Mistake, number>> = {}
  /** Newest day of each gauge that a running mistake has touched, and which. */
  readonly #running = new Map<number, { day: number; mistake: Mistake }>()

  constructor(indexOf: ReadonlyMap<string, number>, firstDay: number, dayCount: number) {
    this.#indexOf = indexOf
    this.#firstDay = firstDay
    this.#readings = new Uint8Array(indexOf.size * dayCount)
    this.#lookedAt = new Uint8Array(dayCount)
    this.#mistaken = new Float64Array(indexOf.size)
    this.#standing = new Float64Array(indexOf.size)
  }

  /** Readings come by day. */
  add(reading: ReadingAmount, decision: Decision | undefined): void {
    const gauge = this.#indexOf.get(reading.gaugeId)
    const row = epochDayFromIso(reading.lastDay) - this.#firstDay
    if (gauge === undefined || row < 0 || row >= this.#lookedAt.length) return
    if (decision === undefined) {
      this.#readings[row * this.#indexOf.size + gauge]! += 1
      return
    }
    const from = Math.max(0, row - NEAR_DAYS)
    this.#lookedAt.fill(1, from, Math.min(this.#lookedAt.length, row + NEAR_DAYS + 1))
    if (decision.verdict === 'asked') return
    if (isStanding(decision, reading)) this.#standing[gauge]! += 1
    else this.#addMistake(gauge, row, decision.mistake)
  }

  #addMistake(gauge: number, row: number, mistake: Mistake | undefined): void {
    const before = this.#running.get(gauge)
    if (mistake !== undefined && runningMistakes.has(mistake)) {
      this.#running.set(gauge, { day: row, mistake })
      if (before !== undefined && before.mistake === mistake && row - before.day <= 1) return
    }
    this.#mistaken[gauge]! += 1
    if (mistake !== undefined) this.#named[mistake] = (this.#named[mistake] ?? 0) + 1
  }

  counts(): DecidedCounts {
    const n = this.#indexOf.size
    const passed = new Float64Array(n)
    for (let row = 0; row < this.#lookedAt.length; row++) {
      if (this.#lookedAt[row] === 0) continue
      for (let g = 0; g < n; g++) passed[g]! += this.#readings[row * n + g]!
    }
    return { mistaken: this.#mistaken, standing: this.#standing, passed, named: this.#named }
  }
}

/** Amended to what it was is standing. */
function isStanding(decision: Decision, reading: ReadingAmount): boolean {
  if (decision.verdict === 'stands') return true
  const { amended } = decision
  return (
    decision.verdict === 'amended' &&
    amended !== null &&
    amended.amountUm === reading.amountUm &&
    amended.isTrace === reading.isTrace &&
    amended.firstDay === reading.firstDay &&
    amended.lastDay === reading.lastDay
  )
}
