/**
 * The rule "let stand when at least this sure" against labelled mistakes: how many wrong readings the odds let expect among
 * those let stand, and how many there really are.
 */
import { expectedLetThrough } from '@gaugewright/science'
import type { FindingArrays, ScoringCase } from './scoreFindings.ts'

export const ruleThresholds = [0.9, 0.95, 0.98, 0.99, 0.995] as const

export interface RuleScore {
  letStandAt: number
  letStand: number
  /** Share of the readings that is left to a person. */
  leftShare: number
  expectedWrong: number
  /** P10 and P90 of the number of wrong readings, by the odds. */
  lowWrong: number
  highWrong: number
  /** Labelled and scored wrong readings among those let stand. */
  reallyWrong: number
  /** Really wrong over expected. */
  ratio: number
}

/** Readings that were changed too little to be scored count neither as good nor as wrong, and are left out. */
export function scoreRule(findings: FindingArrays, against: ScoringCase): RuleScore[] {
  const { fromDay, injected, toDay, truth } = against
  const cellOf = (gauge: number, day: number): number => day * injected.gaugeCount + gauge
  const isWrong = new Map(truth.map((row) => [cellOf(row.gauge, row.day), row.scored]))
  const pStands: number[] = []
  const wrong: boolean[] = []
  for (let i = 0; i < findings.gauge.length; i++) {
    const day = findings.day[i]!
    const label = isWrong.get(cellOf(findings.gauge[i]!, day))
    if (day < fromDay || day > toDay || label === false) continue
    pStands.push(findings.pStands[i]!)
    wrong.push(label === true)
  }
  return ruleThresholds.map((letStandAt) => {
    const { expectedWrong, highWrong, leftToPerson, letStand, lowWrong } = expectedLetThrough(pStands, letStandAt)
    const reallyWrong = wrong.filter((is, i) => is && pStands[i]! >= letStandAt).length
    const leftShare = leftToPerson / pStands.length
    const ratio = reallyWrong / expectedWrong
    return { letStandAt, letStand, leftShare, expectedWrong, lowWrong, highWrong, reallyWrong, ratio }
  })
}
