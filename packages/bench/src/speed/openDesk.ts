/** Starts the desk on a ledger and waits for the line that gives its address. */
import { type ChildProcess, spawn } from 'node:child_process'
import { lastWords } from '../ours/lastWords.ts'
import { commandPath } from '../ours/runCommand.ts'
import { heldTo } from './heldTo.ts'

export interface OpenedDesk {
  url: string
  startedAtMs: number
  child: ChildProcess
  close(): Promise<void>
}

/**
 * @param cores  when given, the desk is held to that many cores (needs `taskset`)
 * @throws {Error} when the desk ends or stays silent for a minute
 */
export function openDesk(words: readonly string[], cores?: number): Promise<OpenedDesk> {
  const startedAtMs = performance.now()
  const [program, ...rest] = [...heldTo(cores), process.execPath, commandPath, ...words]
  const child = spawn(program!, rest, { stdio: ['ignore', 'pipe', 'pipe'] })
  return new Promise((resolve, reject) => {
    let errors = ''
    let said = ''
    const tooLong = setTimeout(() => {
      child.kill('SIGKILL')
      reject(new Error('the desk gave no address within a minute'))
    }, 60_000)
    child.stderr.on('data', (text) => {
      errors = (errors + text).slice(-2000)
    })
    child.stdout.on('data', (text) => {
      said += text
      const url = /https?:\/\/127\.0\.0\.1:\d+\S*/.exec(said)?.[0]
      if (url === undefined) return
      clearTimeout(tooLong)
      resolve({ url: url.replace(/\/$/, ''), startedAtMs, child, close: () => closed(child) })
    })
    child.on('close', (code) => {
      clearTimeout(tooLong)
      reject(new Error(lastWords(errors) ?? `the desk ended with ${code}`))
    })
  })
}

function closed(child: ChildProcess): Promise<void> {
  return new Promise((resolve) => {
    if (child.exitCode !== null) return resolve()
    child.once('close', () => resolve())
    child.kill('SIGTERM')
    setTimeout(() => child.kill('SIGKILL'), 5000).unref()
  })
}
