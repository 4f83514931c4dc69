/**
 * The accepted record: what each gauge is taken to have caught once the decisions in force are applied to the readings.
 * Readings themselves never change. Everything published is derived from this list alone.
 */
import type { Decision, IsoDay, Reading } from '@gaugewright/science'
import { decisionsInForce } from './decisionsInForce.ts'

export interface AcceptedReading {
  reading: Reading
  decision: Decision | null
  amountUm: number
  isTrace: boolean
  firstDay: IsoDay
  lastDay: IsoDay
  /** A person has settled it, by letting it stand or amending it. A rule's decision is not counted here. */
  settled: boolean
}

/** Readings in the order given, set-aside ones left out. An `asked` reading stays as reported until it is decided. */
export function acceptedRecord(readings: readonly Reading[], decisions: readonly Decision[]): AcceptedReading[] {
  const inForce = decisionsInForce(decisions)
  const accepted: AcceptedReading[] = []
  for (const reading of readings) {
    const decision = inForce.get(reading.id) ?? null
    if (decision?.verdict === 'set aside') continue
    const taken = decision?.verdict === 'amended' && decision.amended !== null ? decision.amended : reading
    accepted.push({
      reading,
      decision,
      amountUm: taken.amountUm,
      isTrace: taken.isTrace,
      firstDay: taken.firstDay,
      lastDay: taken.lastDay,
      settled: decision?.by.kind === 'person' && decision.verdict !== 'asked',
    })
  }
  return accepted
}
