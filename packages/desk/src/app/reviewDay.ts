/** Review one observing day: the roll, the docket, the facts and the area means; the rule's decisions are made first. */
import type { AreaMean, DayReview } from '@gaugewright/contract'
import { isoFromEpochDay } from '@gaugewright/science'
import type { Ledger } from '../ports/ledger.ts'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { areaMeansOf } from './field/areaMeansOf.ts'
import { type MorningMap, mapOfMorning } from './field/fieldOfMorning.ts'
import { mapChangeMm } from './field/mapChange.ts'
import { buildDocket } from './morning/buildDocket.ts'
import { buildRoll } from './morning/buildRoll.ts'
import { dayFacts } from './morning/dayFacts.ts'
import { decisionsInForce } from './morning/decisionsInForce.ts'
import { type JudgedMorning, judgedMorning } from './morning/judgedMorning.ts'
import { loadMorning } from './morning/loadMorning.ts'
import { lateAfterMs } from './morning/readingWindow.ts'
import { RecentlyUsed } from './morning/recentlyUsed.ts'
import { ruleDecisions } from './morning/ruleDecisions.ts'

export interface ReviewDayAsk {
  /** ISO date, or `latest`. */
  day: string
  signal?: AbortSignal
}

const KEPT = 24
const kept = new WeakMap<Ledger, RecentlyUsed<DayReview>>()

export async function reviewDay(ports: Ports, ask: ReviewDayAsk): Promise<Answer<DayReview>> {
  const loaded = await loadMorning(ports.ledger, ask.day)
  if (!loaded.ok) return loaded
  let judged = await judgedMorning(ports.ledger, loaded.value, ask.signal)
  if (await applyRule(ports, judged)) {
    const again = await loadMorning(ports.ledger, loaded.value.day)
    if (!again.ok) return again
    judged = await judgedMorning(ports.ledger, again.value, ask.signal)
  }
  const cache = kept.get(ports.ledger) ?? new RecentlyUsed<DayReview>(KEPT)
  kept.set(ports.ledger, cache)
  const key = `${judged.morning.fingerprint}|${judged.learned.version}`
  const before = cache.get(key)
  if (before !== undefined) return answered(before)
  const review = reviewFrom(ports.ledger, judged, await mapOfMorning(ports.ledger, judged))
  cache.set(key, review)
  return answered(review)
}

/** @returns whether the rule decided anything new, or took anything back */
async function applyRule(ports: Ports, judged: JudgedMorning): Promise<boolean> {
  const { network, decisions, letStandAt } = judged.morning
  const added = ruleDecisions({
    letStandAt,
    network,
    odds: judged.odds,
    decisions,
    newId: ports.newId,
    nowUtc: ports.clock.nowUtc(),
  })
  if (added.length > 0) await ports.ledger.appendDecisions(network.id, added)
  return added.length > 0
}

function reviewFrom(ledger: Ledger, judged: JudgedMorning, map: MorningMap): DayReview {
  const { morning, odds, accepted } = judged
  const { network, day, epochDay, range } = morning
  const roll = buildRoll({
    day,
    gauges: morning.gauges,
    readings: morning.readings,
    accepted,
    decisions: decisionsInForce(morning.decisions),
    absences: morning.absences,
    odds,
    lateAfterMs: lateAfterMs(network, day),
  })
  const docket = buildDocket({
    judged,
    mapChangeOf: (readingId, finding) => mapChangeMm(ledger, judged, map, readingId, finding),
  })
  const areas: AreaMean[] = areaMeansOf(ledger, judged, map)
  return {
    network: {
      id: network.id,
      name: network.name,
      unit: network.unit,
      timeZone: network.timeZone,
      readingTime: network.readingTime,
      language: network.language,
    },
    day,
    previousDay: day > range.firstDay ? isoFromEpochDay(epochDay - 1) : null,
    nextDay: day < range.lastDay ? isoFromEpochDay(epochDay + 1) : null,
    firstDay: range.firstDay,
    lastDay: range.lastDay,
    facts: dayFacts(roll, docket),
    roll,
    docket,
    areas,
    modelVersion: judged.learned.version,
  }
}
