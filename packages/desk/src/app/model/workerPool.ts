/** Threads that work side by side on tasks of one program, each handed the same data once at its start. */
import { fileURLToPath } from 'node:url'
import { Piscina } from 'piscina'
import { workerEntry } from './workerEntry.ts'

/**
 * @param name       file beside the caller, without its ending; it exports `workOn`
 * @param callerUrl  `import.meta.url` of the caller
 */
export function workerPool(name: string, callerUrl: string, threads: number, workerData: unknown): Piscina {
  const { file, execArgv, argv } = workerEntry(name, callerUrl)
  return new Piscina({
    filename: fileURLToPath(file),
    name: 'workOn',
    execArgv,
    argv,
    minThreads: threads,
    maxThreads: threads,
    workerData,
  })
}
