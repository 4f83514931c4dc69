/** Pure: judges a stretch of days, each as its own morning saw it, and answers with the odds alone. */
import { judge } from '@gaugewright/science'
import type { OddsOfStretch, OddsStretch, OddsWork } from './oddsWork.ts'

export function oddsOfStretch({ gauges, model }: OddsWork, { table, fromDay, toDay }: OddsStretch): OddsOfStretch {
  const judged = judge(gauges, table, model, { fromDay, toDay, sameMorning: true })
  const told = Array.from({ length: judged.count }, (_, index) => index).filter(
    (index) => (judged.neighbourCount[index] ?? 0) > 0,
  )
  return {
    day: Int32Array.from(told, (index) => judged.day[index] ?? 0),
    gauge: Int32Array.from(told, (index) => judged.gauge[index] ?? 0),
    pStands: Float64Array.from(told, (index) => judged.pStands[index] ?? Number.NaN),
    cannotTell: judged.count - told.length,
  }
}
