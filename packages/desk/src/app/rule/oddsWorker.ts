/** Worker thread: judges a stretch of days, each as its own morning saw it, and answers with the odds alone. */
import { workerData } from 'node:worker_threads'
import { judge } from '@gaugewright/science'
import type { OddsOfStretch, OddsStretch, OddsWork } from './oddsWork.ts'

export function workOn({ table, fromDay, toDay }: OddsStretch): OddsOfStretch {
  const { gauges, model } = workerData as OddsWork
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
