/** Worker thread: finds a network's habits and hands them back. Started by keptHabits.ts. */
import { parentPort, workerData } from 'node:worker_threads'
import { type DailyTable, type DecidedCounts, findHabits, type GaugeSet, type Model } from '@gaugewright/science'

const { gauges, record, model, decided } = workerData as {
  gauges: GaugeSet
  record: DailyTable
  model: Model
  decided: DecidedCounts | null
}
parentPort?.postMessage(findHabits(gauges, record, model, decided ?? undefined))
