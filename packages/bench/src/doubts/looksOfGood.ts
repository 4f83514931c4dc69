/**
 * How readings that nobody changed look by their surroundings, for each range of their odds. Where the odds are low,
 * many are natural mistakes that no label tells of; the last range shows how often the rules say so of ordinary readings.
 */
import { nearestGauges } from '../baselines/nearestGauges.ts'
import { type InjectedSet, stepMmOf } from '../data/loadInjected.ts'
import type { FindingArrays } from '../score/scoreFindings.ts'
import { likelyReason, verdictOf } from './likelyReason.ts'
import { surroundingsOf } from './surroundings.ts'

export interface LooksBin {
  from: number
  below: number
  /** Wrong readings that were put in, and good ones that nobody changed. */
  wrong: number
  good: number
  /** Good ones of 1 mm or more, or of nothing while 1 mm or more fell around: these are looked at. */
  lookedAt: number
  looksWrong: number
  looksRight: number
}

const edges = [0, 0.1, 0.5, 0.9, 1]
const leastMm = 1

/** @param findings  with odds of standing */
export function looksOfGood(
  set: InjectedSet,
  findings: FindingArrays,
  { fromDay, toDay }: { fromDay: number; toDay: number },
): LooksBin[] {
  const nearest = nearestGauges(set.gauges)
  const isScored = new Map(set.truth.map((row) => [`${row.gauge} ${row.day}`, row.scored]))
  const stepMm = stepMmOf(set)
  const bins = edges.slice(1).map((below, place) => ({
    from: edges[place]!,
    below,
    wrong: 0,
    good: 0,
    lookedAt: 0,
    looksWrong: 0,
    looksRight: 0,
  }))
  for (let i = 0; i < findings.gauge.length; i++) {
    const gauge = findings.gauge[i]!
    const day = findings.day[i]!
    if (day < fromDay || day > toDay) continue
    const bin = bins.find(({ below }) => findings.pStands[i]! < below) ?? bins.at(-1)!
    const scored = isScored.get(`${gauge} ${day}`)
    if (scored === true) bin.wrong++
    // Changed by too little to count as wrong, and not good either.
    if (scored !== undefined) continue
    bin.good++
    const at = surroundingsOf({ gauge, day, judged: set.injected, clean: set.clean, nearest })
    if (!(at.reportedMm >= leastMm || (at.reportedMm === 0 && at.around.medianMm >= leastMm))) continue
    bin.lookedAt++
    const verdict = verdictOf[likelyReason(at, stepMm)]
    if (verdict === 'wrong') bin.looksWrong++
    else if (verdict === 'right') bin.looksRight++
  }
  return bins
}
