/** How much the map would change if a proposal were taken: the weight of a doubt. */
import { type FieldValues, type Finding, fieldWith } from '@gaugewright/science'
import type { Ledger } from '../../ports/ledger.ts'
import { type JudgedMorning, judgedUndecided } from '../morning/judgedMorning.ts'
import { RecentlyUsed } from '../morning/recentlyUsed.ts'
import { type AmountChange, withChanges } from './dayAmounts.ts'
import { amountsOfMorning, type MorningMap, paramsOfMorning } from './fieldOfMorning.ts'
import { localMapChange } from './localMapChange.ts'

const changes = new WeakMap<Ledger, RecentlyUsed<number>>()
const befores = new WeakMap<Ledger, RecentlyUsed<FieldValues>>()
/** Proposals that differ by less than this are one and the same (mm). */
const SAME_MM = 0.05
/** In larger networks the change is looked for round the gauge alone. */
const WHOLE_UP_TO = 600

/**
 * Mean absolute change in mm over the basin between the day as reported and the day with this one proposal taken.
 * Measured on the day as reported, whatever else was decided, so that deciding one doubt leaves the others' weights.
 */
export function mapChangeMm(
  ledger: Ledger,
  judged: JudgedMorning,
  map: MorningMap,
  readingId: string,
  finding: Finding,
): number {
  const undecided = judgedUndecided(ledger, judged)
  const change = proposedChange(finding)
  const cache = changes.get(ledger) ?? new RecentlyUsed<number>(500)
  changes.set(ledger, cache)
  const key = `${undecided.stateKey} ${readingId} ${Math.round(change.amountMm / SAME_MM)}`
  const kept = cache.get(key)
  if (kept !== undefined) return kept
  const { params } = paramsOfMorning(ledger, judged)
  const { gaugeSet } = judged.learned
  const amounts = amountsOfMorning(undecided)
  if (gaugeSet.ids.length > WHOLE_UP_TO) {
    const local = localMapChange(params, gaugeSet, amounts, change, map.coarse.areaM2)
    cache.set(key, local)
    return local
  }
  const before = beforeOf(ledger, undecided, () => fieldWith(params, gaugeSet, amounts, map.coarse.points))
  const after = fieldWith(params, gaugeSet, withChanges(amounts, [change]), map.coarse.points)
  const changed = meanAbsoluteChange(before.meanMm, after.meanMm)
  cache.set(key, changed)
  return changed
}

/** A proposal that covers other days than this one alone takes the reading off this day's map. */
export function proposedChange(finding: Finding): AmountChange {
  const isThisDay = finding.proposedFirstDay === finding.day && finding.proposedLastDay === finding.day
  return { gauge: finding.gauge, amountMm: isThisDay ? finding.proposedMm : Number.NaN, isTrace: false }
}

/** Cells that are missing on either side are left out; 0 where none is left. */
export function meanAbsoluteChange(before: ArrayLike<number | null>, after: ArrayLike<number | null>): number {
  let sum = 0
  let count = 0
  for (let cell = 0; cell < before.length; cell++) {
    const change = Math.abs((after[cell] ?? Number.NaN) - (before[cell] ?? Number.NaN))
    if (Number.isNaN(change)) continue
    sum += change
    count++
  }
  return count === 0 ? 0 : sum / count
}

function beforeOf(ledger: Ledger, undecided: JudgedMorning, make: () => FieldValues): FieldValues {
  const cache = befores.get(ledger) ?? new RecentlyUsed<FieldValues>(8)
  befores.set(ledger, cache)
  const kept = cache.get(undecided.stateKey)
  if (kept !== undefined) return kept
  const made = make()
  cache.set(undecided.stateKey, made)
  return made
}
