/** Learning takes seconds on years of readings: it runs beside the desk and can be stopped. */
import type { DailyTable, GaugeSet, Model } from '@gaugewright/science'
import { runInWorker } from './runInWorker.ts'

/** @throws the signal's reason when stopped; what the learning threw when it failed */
export function learnInWorker(gauges: GaugeSet, history: DailyTable, signal?: AbortSignal): Promise<Model> {
  return runInWorker<Model>('learnModelWorker', import.meta.url, { gauges, history }, signal)
}
