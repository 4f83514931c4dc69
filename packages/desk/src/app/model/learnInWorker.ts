/** Learning takes seconds on years of readings: it runs beside the desk and can be stopped. */
import { Worker } from 'node:worker_threads'
import type { DailyTable, GaugeSet, Model } from '@gaugewright/science'
import { workerEntry } from './workerEntry.ts'

/** @throws the signal's reason when stopped; what the learning threw when it failed */
export function learnInWorker(gauges: GaugeSet, history: DailyTable, signal?: AbortSignal): Promise<Model> {
  if (signal?.aborted) return Promise.reject(signal.reason)
  const { file, execArgv, argv } = workerEntry('learnModelWorker', import.meta.url)
  return new Promise((resolve, reject) => {
    const worker = new Worker(file, { workerData: { gauges, history }, execArgv, argv })
    const stop = (): void => {
      void worker.terminate()
      reject(signal?.reason)
    }
    signal?.addEventListener('abort', stop, { once: true })
    const finish = (settle: () => void): void => {
      signal?.removeEventListener('abort', stop)
      settle()
      void worker.terminate()
    }
    worker.once('message', (model: Model) => finish(() => resolve(model)))
    worker.once('error', (error) => finish(() => reject(error)))
    worker.once('exit', (code) => finish(() => reject(new Error(`learning stopped with code ${code}`))))
  })
}
