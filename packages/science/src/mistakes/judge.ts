/**
 * Judge a table of reports: what each should have been by all others, and the odds of each mistake. Pure and
 * repeatable: the same table and model give the same findings.
 */
import { openLatentTable } from '../expectation/latentTable.ts'
import type { Neighbourhood } from '../expectation/neighbourhood.ts'
import { neighbourhoodOf } from '../expectation/neighbourhoodOf.ts'
import type { Model } from '../model/model.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { judgeForward } from './judgeForward.ts'
import { type JudgeAsk, type Judgement, openJudgement } from './judgement.ts'
import { judgeWhole } from './judgeWhole.ts'
import { mostNeighbours, reserveNeighbours } from './limits.ts'

/**
 * @param gauges  n gauges on a plane, m
 * @param table   reports of n gauges; days not asked for give context (a week before, two days after)
 * @param model   learned of the same gauges (learnModel)
 */
export function judge(gauges: GaugeSet, table: DailyTable, model: Model, ask: JudgeAsk): Judgement {
  const out = openJudgement(gauges, openLatentTable(table, model), hoodOf(gauges, model), ask)
  if (ask.sameMorning) judgeForward(out, ask)
  else judgeWhole(out, ask)
  return out
}

/** The neighbourhoods that reports of these gauges are judged by. */
export function hoodOf(gauges: GaugeSet, model: Model): Neighbourhood {
  return neighbourhoodOf(gauges, model.correlation, mostNeighbours(gauges.ids.length) + reserveNeighbours)
}
