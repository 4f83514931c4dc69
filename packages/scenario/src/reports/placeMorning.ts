/**
 * This morning, arranged by hand on top of honest reports: about a dozen readings that need a decision, one of every
 * kind, and one storm that is right; gauges that are silent, away, late, or owe a total. Each is put where the morning's
 * rain makes it plain enough to be found and far enough from the others to be judged by itself.
 */
import { morningPlans } from './morningPlans.ts'
import { type MorningAsk, type MorningCase, MorningStage } from './morningStage.ts'
import { NOTHING } from './reportTable.ts'

export interface Morning {
  cases: MorningCase[]
  /** Remarks by cell. */
  remarks: Map<number, string>
}

/** The storm's amount: 2.90 in. */
export const STORM_HUNDREDTHS = 290
const SILENT = 4
const AWAY = 4
const OWING = 3
const TOTALS = 2
const LATE = 6

export function placeMorning(ask: MorningAsk): Morning {
  const stage = new MorningStage(ask)
  stormRight(stage, ask)
  for (const plan of morningPlans) {
    const found = stage.find(plan.suits)
    if (found === null) continue
    stage.take(found.gauge, plan.name, plan.kind)
    plan.make(stage, found.gauge, found.caught)
  }
  for (let count = 0; count < OWING; count++) stage.leaveOwing()
  for (let count = 0; count < AWAY; count++) stage.sendAway()
  for (let count = 0; count < SILENT; count++) stage.silence()
  for (let count = 0; count < TOTALS; count++) stage.declareTotal()
  for (let count = 1; count < LATE; count++) stage.makeLate()
  return { cases: stage.cases, remarks: stage.remarks }
}

function stormRight(stage: MorningStage, ask: MorningAsk): void {
  const { table, storm } = ask
  const core = stage.cell(storm.coreSite, 0)
  if (table.typed[core] === NOTHING) return
  table.typed[core] = STORM_HUNDREDTHS
  table.honest[core] = STORM_HUNDREDTHS
  table.isTrace[core] = 0
  stage.take(storm.coreSite, 'storm-right', 'stands')
  const beside = stage.cell(storm.besideSite, 0)
  if (table.typed[beside] === NOTHING) return
  stage.readLate(storm.besideSite)
  stage.remarks.set(beside, 'Thunder from about half past three, small hail, over by five.')
  stage.take(storm.besideSite, 'late-support', 'stands')
}
