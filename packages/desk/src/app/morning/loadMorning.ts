/** Loads what the review of one observing day needs: the gauges, and the readings and decisions of the days around it. */
import { createHash } from 'node:crypto'
import type { Decision, IsoDay, Reading } from '@gaugewright/science'
import { epochDayFromIso, isoFromEpochDay, parseIsoDay } from '@gaugewright/science'
import type { Absence, DayRange, Gauge, Ledger, NetworkSettings } from '../../ports/ledger.ts'
import { type Answer, answered, refused } from '../answer.ts'
import { decisionsInForce } from './decisionsInForce.ts'
import { idsKeyOf, readingsAround } from './readingsAround.ts'

/** Days before and after the day judged: carried totals reach back, late slips and totals reach forward. */
export const windowDays = { before: 7, after: 2 } as const

export interface Morning {
  network: NetworkSettings
  day: IsoDay
  epochDay: number
  /** Days on which any reading of the ledger ends. */
  range: DayRange
  gauges: Gauge[]
  /** Shared: not to be changed. */
  readings: readonly Reading[]
  decisions: Decision[]
  absences: Absence[]
  /** Of the rule's setting in force; null leaves everything to a person. */
  letStandAt: number | null
  /**
   * Odds of standing below which a reading comes to the docket: with a rule everything that it does not let stand is a
   * person's; without one, what is in doubt by the network's own measure.
   */
  docketBelow: number
  /** Names all that findings rest on but the decisions. */
  readingsKey: string
  /** Differs whenever anything above differs. */
  fingerprint: string
  /** Differs whenever something differs that findings and the map rest on: an undone decision is as if never made. */
  substance: string
}

/** @param day  ISO date of the day, or `latest` */
export async function loadMorning(ledger: Ledger, day: string): Promise<Answer<Morning>> {
  const network = (await ledger.networks())[0]
  const range = network === undefined ? null : await ledger.dayRange(network.id)
  if (network === undefined || range === null) {
    return refused(
      'LEDGER_EMPTY',
      network === undefined ? 'the ledger holds no network yet' : `${network.name} holds no readings yet`,
      'Run "gaugewright import" with a file of gauges and a file of readings, or "gaugewright demo".',
    )
  }
  const epochDay = day === 'latest' ? epochDayFromIso(range.lastDay) : parseIsoDay(day)
  if (epochDay === null) return refused('DAY_UNREADABLE', `"${day}"`, 'Give the day as YYYY-MM-DD, or "latest".')
  const isoDay = isoFromEpochDay(epochDay)
  if (isoDay < range.firstDay || isoDay > range.lastDay) {
    return refused(
      'DAY_OUTSIDE_RECORD',
      `${isoDay}, but the record runs from ${range.firstDay} to ${range.lastDay}`,
      'Choose a day within the record.',
    )
  }
  const fromDay = isoFromEpochDay(epochDay - windowDays.before)
  const toDay = isoFromEpochDay(epochDay + windowDays.after)
  const [gauges, readings, decisions, absences, ruleSettings] = await Promise.all([
    ledger.gauges(network.id),
    readingsAround(ledger, network.id, fromDay, toDay, range.stored),
    ledger.decisions(network.id, fromDay, toDay),
    ledger.absences(network.id, fromDay, toDay),
    ledger.ruleSettings(network.id),
  ])
  const letStandAt = ruleSettings.at(-1)?.letStandAt ?? null
  const rule = { letStandAt, docketBelow: letStandAt ?? network.docketBelow }
  const facts = { network, day: isoDay, range, gauges, readings, decisions, absences, ...rule }
  return answered(withKeys({ ...facts, epochDay, readingsKey: readingsKeyOf(facts) }))
}

/** The same morning with other decisions. */
export function withDecisions(morning: Morning, decisions: Decision[]): Morning {
  return withKeys({ ...morning, decisions })
}

/** Readings are immutable, so their ids stand for them; whatever may change beside them is taken whole. */
function readingsKeyOf({
  network,
  day,
  range,
  gauges,
  readings,
}: Pick<Morning, 'network' | 'day' | 'range' | 'gauges' | 'readings'>): string {
  const beside = JSON.stringify([network, day, range.firstDay, range.lastDay, gauges])
  const digest = createHash('sha1').update(beside)
  digest.update(idsKeyOf(readings))
  return `${day}:${digest.digest('base64url')}`
}

function withKeys(facts: Omit<Morning, 'fingerprint' | 'substance'>): Morning {
  const { readingsKey, range, absences, decisions, letStandAt } = facts
  const substance = createHash('sha1').update(readingsKey)
  for (const { readingId, verdict, amended, by } of decisionsInForce(decisions).values()) {
    if (verdict === 'asked' || (by.kind === 'rule' && verdict === 'stands')) continue
    substance.update(JSON.stringify([readingId, verdict, amended]))
  }
  const whole = createHash('sha1').update(readingsKey)
  whole.update(JSON.stringify([range, absences, letStandAt, decisions.map((decision) => decision.id)]))
  return { ...facts, fingerprint: whole.digest('base64url'), substance: substance.digest('base64url') }
}
