/** Where a worker thread's program lies and how it is started: built JavaScript, or TypeScript while developing. */
export interface WorkerEntry {
  file: URL
  execArgv: string[]
  argv: string[]
}

/**
 * A pool asks `require` for a thread's program before `import`. Where `require` takes modules, a thread that is stopped just
 * then takes the whole process with it (Node 20.19 to 20.20: "IsGraphAsync must be used on an instantiated module"); refused,
 * the program is imported, and can be stopped at any instant.
 */
const NEVER_REQUIRED = '--no-experimental-require-module'
const importedOnly = process.allowedNodeEnvironmentFlags.has(NEVER_REQUIRED) ? [NEVER_REQUIRED] : []

/**
 * @param name      file beside the caller, without its ending
 * @param callerUrl `import.meta.url` of the caller
 */
export function workerEntry(name: string, callerUrl: string): WorkerEntry {
  if (!callerUrl.endsWith('.ts'))
    return { file: new URL(`./${name}.js`, callerUrl), execArgv: [...importedOnly], argv: [] }
  return {
    file: new URL('./sourceThread.mjs', import.meta.url),
    execArgv: ['--conditions=source', ...importedOnly],
    argv: [new URL(`./${name}.ts`, callerUrl).href],
  }
}
