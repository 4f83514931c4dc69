/** Loads what the review of one observing day needs: the gauges, and the readings and decisions of the days around it. */
import { createHash } from 'node:crypto'
import type { Decision, IsoDay, Reading } from '@gaugewright/science'
import { epochDayFromIso, isoFromEpochDay, parseIsoDay } from '@gaugewright/science'
import type { Absence, Gauge, Ledger, NetworkSettings } from '../../ports/ledger.ts'
import { type Answer, answered, refused } from '../answer.ts'

/** Days before and after the day judged: carried totals reach back, late slips and totals reach forward. */
export const windowDays = { before: 8, after: 3 } as const

export interface Morning {
  network: NetworkSettings
  day: IsoDay
  epochDay: number
  /** Days on which any reading of the ledger ends. */
  range: { firstDay: IsoDay; lastDay: IsoDay; readings: number }
  gauges: Gauge[]
  readings: Reading[]
  decisions: Decision[]
  absences: Absence[]
  /** Differs whenever anything above differs: the key of every cache. */
  fingerprint: string
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
  const [gauges, readings, decisions, absences] = await Promise.all([
    ledger.gauges(network.id),
    ledger.readings(network.id, fromDay, toDay),
    ledger.decisions(network.id, fromDay, toDay),
    ledger.absences(network.id, fromDay, toDay),
  ])
  const facts = { network, day: isoDay, range, gauges, readings, decisions, absences }
  return answered({ ...facts, epochDay, fingerprint: fingerprintOf(facts) })
}

/** The same morning with other decisions. */
export function withDecisions(morning: Morning, decisions: Decision[]): Morning {
  const facts = { ...morning, decisions }
  return { ...facts, fingerprint: fingerprintOf(facts) }
}

/** A digest of ids and of whatever may change beside them; readings and decisions are immutable, so ids suffice. */
function fingerprintOf(facts: Omit<Morning, 'epochDay' | 'fingerprint'>): string {
  const digest = createHash('sha1')
  digest.update(JSON.stringify([facts.network, facts.day, facts.range, facts.gauges, facts.absences]))
  for (const reading of facts.readings) digest.update(`r${reading.id}`)
  for (const decision of facts.decisions) digest.update(`d${decision.id}`)
  return `${facts.day}:${digest.digest('base64url')}`
}
