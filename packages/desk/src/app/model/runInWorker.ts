/** Work that takes seconds runs in a thread beside the desk and can be stopped. */
import { Worker } from 'node:worker_threads'
import { workerEntry } from './workerEntry.ts'

/**
 * @param name       file beside the caller, without its ending; it posts one message: the result
 * @param callerUrl  `import.meta.url` of the caller
 * @param data       what the thread is given; copied
 * @throws the signal's reason when stopped; what the thread threw when it failed
 */
export function runInWorker<T>(name: string, callerUrl: string, data: unknown, signal?: AbortSignal): Promise<T> {
  if (signal?.aborted) return Promise.reject(signal.reason)
  const { file, execArgv, argv } = workerEntry(name, callerUrl)
  return new Promise((resolve, reject) => {
    const worker = new Worker(file, { workerData: data, execArgv, argv })
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
    worker.once('message', (result: T) => finish(() => resolve(result)))
    worker.once('error', (error) => finish(() => reject(error)))
    worker.once('exit', (code) => finish(() => reject(new Error(`${name} stopped with code ${code}`))))
  })
}
