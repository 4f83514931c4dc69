/** The docket of a judged morning: what needs a decision, with its likeliest explanation, proposal and weight. */
import type { DocketRow } from '@gaugewright/contract'
import { type Evidence, type Finding, isoFromEpochDay, type Reading } from '@gaugewright/science'
import type { Gauge } from '../../ports/ledger.ts'
import { expectedSpansOf } from '../wording/expectedSpans.ts'
import { isSnowSeason } from '../wording/snowSeason.ts'
import { findingSentence } from '../wording/wordFinding.ts'
import { rangeOf, type WordingAsk } from '../wording/wordingAsk.ts'
import { decisionsInForce } from './decisionsInForce.ts'
import { docketWeight, inDocketOrder } from './docketOrder.ts'
import { docketTest } from './docketTest.ts'
import { evidenceOf, type JudgedMorning } from './judgedMorning.ts'
import { proposalOf } from './proposalOf.ts'
import { suggestedAct } from './suggestedAct.ts'

export interface DocketAsk {
  judged: JudgedMorning
  /** Mean absolute change of the map, mm over the basin, if the proposal were taken. */
  mapChangeOf: (readingId: string, finding: Finding) => number
}

/** In docket order. Decided readings are left out; those only asked about stay. */
export function buildDocket({ judged, mapChangeOf }: DocketAsk): DocketRow[] {
  const { morning, odds } = judged
  const inForce = decisionsInForce(morning.decisions)
  const isForDocket = docketTest(morning)
  const gaugeOf = new Map(morning.gauges.map((gauge) => [gauge.id, gauge]))
  const rows: DocketRow[] = []
  for (const reading of morning.readings) {
    const odd = odds.get(reading.id)
    const gauge = gaugeOf.get(reading.gaugeId)
    const decision = inForce.get(reading.id) ?? null
    const isAsked = decision?.verdict === 'asked'
    if (odd === undefined || gauge === undefined || (decision !== null && !isAsked)) continue
    if (!isAsked && !isForDocket(reading.id, odd)) continue
    const evidence = evidenceOf(judged, reading.id)
    if (evidence === null) continue
    const { finding } = evidence
    const expected = rangeOf(finding)
    const proposal = proposalOf(finding, morning.network.unit)
    const mapChangeMm = mapChangeOf(reading.id, finding)
    rows.push({
      readingId: reading.id,
      gaugeId: gauge.id,
      code: gauge.code,
      name: gauge.name,
      day: morning.day,
      amountUm: reading.amountUm,
      isTrace: reading.isTrace,
      text: reading.text,
      standsOdds: finding.standsOdds,
      likeliest: finding.likeliestMistake,
      likeliestOdds: finding.likeliestMistakeOdds,
      expectedP10Mm: expected.lowMm,
      expectedP50Mm: expected.midMm,
      expectedP90Mm: expected.highMm,
      suggested: suggestedAct(finding, morning.network.docketBelow),
      proposedUm: proposal?.amountUm ?? null,
      proposedFirstDay: isoFromEpochDay(finding.proposedFirstDay),
      proposedLastDay: isoFromEpochDay(finding.proposedLastDay),
      mapChangeMm,
      weight: docketWeight(finding.standsOdds, mapChangeMm),
      sentence: findingSentence(evidence.explanations, wordingAskOf(judged, gauge, reading, evidence)),
      decision,
    })
  }
  return inDocketOrder(rows)
}

export function wordingAskOf(
  judged: JudgedMorning,
  gauge: Gauge,
  reading: Pick<Reading, 'text' | 'unit'>,
  evidence: Evidence,
): WordingAsk {
  const { network } = judged.morning
  return {
    language: network.language,
    unit: network.unit,
    gaugeName: gauge.name,
    observerName: gauge.observerName,
    typedText: reading.text,
    typedUnit: reading.unit,
    finding: evidence.finding,
    expectedSpans: expectedSpansOf(judged.judgement, evidence),
    isSnowSeason: isSnowSeason(gauge.latDeg, evidence.finding.day),
  }
}
