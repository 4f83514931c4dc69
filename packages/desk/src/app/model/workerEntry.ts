/** Where a worker thread's program lies and how it is started: built JavaScript, or TypeScript while developing. */
export interface WorkerEntry {
  file: URL
  execArgv: string[]
  argv: string[]
}

/**
 * @param name      file beside the caller, without its ending
 * @param callerUrl `import.meta.url` of the caller
 */
export function workerEntry(name: string, callerUrl: string): WorkerEntry {
  if (!callerUrl.endsWith('.ts')) return { file: new URL(`./${name}.js`, callerUrl), execArgv: [], argv: [] }
  return {
    file: new URL('./sourceThread.mjs', import.meta.url),
    execArgv: ['--conditions=source'],
    argv: [new URL(`./${name}.ts`, callerUrl).href],
  }
}
