/** All that a screen or a letter needs to show one finding: expectation, odds, neighbours, days around, words. */
import type { DayEvidence } from '@gaugewright/contract'
import { bearingDeg, type Evidence, expectationLevels, isoFromEpochDay } from '@gaugewright/science'
import type { Gauge } from '../ports/ledger.ts'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { type CurrentReading, currentReading } from './currentReading.ts'
import { arrangementNotes } from './morning/arrangementNotes.ts'
import { wordingAskOf } from './morning/buildDocket.ts'
import { evidenceOf, type JudgedMorning, judgedMorning, judgedWithout } from './morning/judgedMorning.ts'
import { loadMorning } from './morning/loadMorning.ts'
import { proposalOf } from './morning/proposalOf.ts'
import { suggestedAct } from './morning/suggestedAct.ts'
import { findingSentence, observerMessage, wordsFor } from './wording/wordFinding.ts'
import { allowedForLine } from './wording/wordHabit.ts'

export interface EvidenceAsk {
  readingId: string
}

export async function evidenceForReading(ports: Pick<Ports, 'ledger'>, ask: EvidenceAsk): Promise<Answer<DayEvidence>> {
  const found = await currentReading(ports.ledger, ask.readingId)
  if (!found.ok) return found
  const { reading } = found.value
  const loaded = await loadMorning(ports.ledger, reading.lastDay)
  if (!loaded.ok) return loaded
  const morning = loaded.value
  const gauge = morning.gauges.find((row) => row.id === reading.gaugeId)
  const asDecided = await judgedMorning(ports.ledger, morning)
  // A reading that a person settled is shown as it was reported: its own decisions are left out of its evidence.
  const isSettled = asDecided.accepted.every((row) => row.reading.id !== reading.id || row.settled)
  const judged = isSettled ? judgedWithout(ports.ledger, asDecided, reading.id) : asDecided
  const evidence = evidenceOf(judged, reading.id)
  if (gauge === undefined || evidence === null) {
    return refused(
      'READING_NOT_JUDGED',
      `${gauge?.name ?? reading.gaugeId}, ${reading.lastDay}: read far from the reading hour, or beside another reading`,
      'Decide from the reading itself; it is not compared with its neighbours.',
    )
  }
  const decisions = morning.decisions.filter((decision) => decision.readingId === reading.id)
  return answered({ ...evidenceFrom(judged, found.value, gauge, evidence), decisions })
}

function evidenceFrom(
  judged: JudgedMorning,
  { reading, earlier }: CurrentReading,
  gauge: Gauge,
  evidence: Evidence,
): Omit<DayEvidence, 'decisions'> {
  const { morning } = judged
  const { finding } = evidence
  const words = wordingAskOf(judged, gauge, reading, evidence)
  const neighbourGauge = (index: number): Gauge | undefined => morning.gauges[index]
  return {
    readingId: reading.id,
    gaugeId: gauge.id,
    code: gauge.code,
    name: gauge.name,
    day: morning.day,
    observerName: gauge.observerName,
    reading: {
      text: reading.text,
      unit: reading.unit,
      amountUm: reading.amountUm,
      isTrace: reading.isTrace,
      firstDay: reading.firstDay,
      lastDay: reading.lastDay,
      endsAtUtc: reading.endsAtUtc,
      door: reading.door,
      remark: reading.remark,
    },
    earlier: earlier.map(({ text, amountUm, receivedAtUtc }) => ({ text, amountUm, receivedAtUtc })),
    canTell: finding.canTell,
    standsOdds: finding.standsOdds,
    suggested: suggestedAct(finding, morning.network.docketBelow),
    expectation: {
      dryChance: finding.expectation.dryChance,
      meanMm: finding.expectation.meanMm,
      levels: [...expectationLevels],
      mm: [...finding.expectation.quantilesMm],
    },
    explanations: [...evidence.explanations]
      .sort((a, b) => b.odds - a.odds)
      .map((explanation) => ({
        kind: explanation.kind,
        odds: explanation.odds,
        impliedMm: explanation.impliedMm,
        impliedP10Mm: explanation.impliedP10Mm,
        impliedP90Mm: explanation.impliedP90Mm,
        firstDay: isoFromEpochDay(explanation.firstDay),
        lastDay: isoFromEpochDay(explanation.lastDay),
        sentence: wordsFor(explanation, words).sentence,
      })),
    sentence: findingSentence(evidence.explanations, words),
    message: observerMessage(evidence.explanations, words),
    neighbours: evidence.neighbours.flatMap((neighbour) => {
      const other = neighbourGauge(neighbour.gauge)
      if (other === undefined) return []
      return [
        {
          gaugeId: other.id,
          code: other.code,
          name: other.name,
          distanceM: neighbour.distanceM,
          bearingDeg: bearingDeg(gauge.latDeg, gauge.lonDeg, other.latDeg, other.lonDeg),
          elevationM: other.elevationM,
          amountMm: Number.isNaN(neighbour.amountMm) ? null : neighbour.amountMm,
          isTrace: neighbour.isTrace,
          weight: neighbour.weight,
          believed: neighbour.believed,
        },
      ]
    }),
    daysAround: evidence.daysAround.map((around) => ({ ...around, day: isoFromEpochDay(around.day) })),
    allowedFor: allowedForOf(judged, gauge.id),
    notes: arrangementNotes(morning, gauge.id),
    proposal: proposalOf(finding, morning.network.unit),
  }
}

/** What the model knows of the gauge's ways, and so does not hold against its readings. */
function allowedForOf({ learned, morning }: JudgedMorning, gaugeId: string): string | null {
  const index = learned.indexOf.get(gaugeId) ?? -1
  const offsetDays = learned.model.correlation.offsetDays[index] ?? 0
  const takenAsHabit = 1 - (learned.model.slipShare[index] ?? 1)
  return allowedForLine(offsetDays, takenAsHabit, morning.network.language)
}
