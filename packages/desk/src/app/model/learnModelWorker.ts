/** Worker thread: learns a network's model and hands it back. Started by learnInWorker.ts. */
import { parentPort, workerData } from 'node:worker_threads'
import { type DailyTable, type GaugeSet, learnModel } from '@gaugewright/science'

const { gauges, history } = workerData as { gauges: GaugeSet; history: DailyTable }
parentPort?.postMessage(learnModel(gauges, history))
