/**
 * The judged morning that entries are checked against. While readings pour in it would be another one with every reading,
 * and each costs a judgement of all gauges: one that is a little old serves as well, and is made anew behind the work.
 */
import type { IsoDay } from '@gaugewright/science'
import type { Ledger } from '../../ports/ledger.ts'
import { type JudgedMorning, judgedMorning } from '../morning/judgedMorning.ts'
import { loadMorning } from '../morning/loadMorning.ts'

const FRESH_MS = 20_000
const USABLE_MS = 15 * 60_000

interface Kept {
  made: Promise<JudgedMorning | null>
  madeAtMs: number
  isRenewing: boolean
}

const DAYS_KEPT = 3
const kept = new WeakMap<Ledger, Map<IsoDay, Kept>>()

/** Null where the day has no reading yet. */
export function entryMorning(ledger: Ledger, day: IsoDay, nowMs: number): Promise<JudgedMorning | null> {
  const days = kept.get(ledger) ?? new Map<IsoDay, Kept>()
  kept.set(ledger, days)
  const before = days.get(day)
  const ageMs = before === undefined ? Number.POSITIVE_INFINITY : nowMs - before.madeAtMs
  if (before === undefined || ageMs > USABLE_MS) return renewed(ledger, days, day, nowMs)
  if (ageMs > FRESH_MS && !before.isRenewing) {
    before.isRenewing = true
    const made = load(ledger, day)
    made.then(
      () => days.set(day, { made, madeAtMs: nowMs, isRenewing: false }),
      () => days.delete(day),
    )
  }
  return before.made
}

function renewed(ledger: Ledger, days: Map<IsoDay, Kept>, day: IsoDay, nowMs: number): Promise<JudgedMorning | null> {
  const made = load(ledger, day)
  days.delete(day)
  days.set(day, { made, madeAtMs: nowMs, isRenewing: false })
  made.catch(() => days.delete(day))
  for (const oldest of days.keys()) {
    if (days.size <= DAYS_KEPT) break
    days.delete(oldest)
  }
  return made
}

async function load(ledger: Ledger, day: IsoDay): Promise<JudgedMorning | null> {
  const loaded = await loadMorning(ledger, day)
  return loaded.ok ? judgedMorning(ledger, loaded.value) : null
}
