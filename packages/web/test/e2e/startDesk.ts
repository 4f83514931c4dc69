/** A desk for the browser tests: the real one on a demo ledger of its own, on a free port, in a folder that goes away. */
import { type ChildProcess, spawn } from 'node:child_process'
import { copyFile, mkdtemp, rm } from 'node:fs/promises'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

export type RunningDesk = { url: string; ledger: string; stop: () => Promise<void> }

const program = fileURLToPath(new URL('../../../desk/bin/gaugewright.js', import.meta.url))
const source = fileURLToPath(new URL('../../../desk/src/main.ts', import.meta.url))
/** With GAUGEWRIGHT_E2E_SOURCE=1 the desk runs from its source, so that a change needs no build of the desk. */
export const startWords = process.env.GAUGEWRIGHT_E2E_SOURCE
  ? ['--conditions=source', '--import', 'tsx', source]
  : [program]

/** Fewer years than usual, to be quick. */
export const demoYears: readonly string[] = ['--years', '2']

export async function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer()
    server.once('error', reject)
    server.listen(0, '127.0.0.1', () => {
      const address = server.address()
      server.close(() =>
        address && typeof address === 'object' ? resolve(address.port) : reject(new Error('no port')),
      )
    })
  })
}

/** Serve a demo: a copy of the one made before the tests, or, with other options or without it, one of its own. @throws {Error} with what the desk said when it stops or is not there within 150 s */
export async function startDesk(options: readonly string[] = demoYears): Promise<RunningDesk> {
  const folder = await mkdtemp(join(tmpdir(), 'gaugewright-e2e-'))
  const port = await freePort()
  const ledger = join(folder, 'demo.db')
  const ready = process.env.GAUGEWRIGHT_E2E_DEMO
  if (ready !== undefined && options === demoYears) await copyFile(ready, ledger)
  const words = ['demo', '--db', ledger, ...options, '--port', String(port), '--no-open']
  const desk = spawn(process.execPath, [...startWords, ...words], { stdio: ['ignore', 'pipe', 'pipe'] })
  let said = ''
  for (const stream of [desk.stdout, desk.stderr])
    stream.on('data', (part) => {
      said += String(part)
    })
  let isStopped = false
  desk.on('exit', (code, signal) => {
    // What the browser says then (a refused connection) does not tell why.
    if (!isStopped) console.error(`the desk ended by itself: code ${code}, signal ${signal}\n${said.slice(-4000)}`)
  })
  const url = `http://127.0.0.1:${port}`
  const until = Date.now() + 150_000
  while (!(await answers(`${url}/api/days/latest`))) {
    if (hasEnded(desk) || Date.now() > until) {
      isStopped = true
      desk.kill('SIGKILL')
      throw new Error(`the desk did not start (${[...startWords, ...words].join(' ')}): ${said.slice(-2000)}`)
    }
    await new Promise((resolve) => setTimeout(resolve, 200))
  }
  return {
    url,
    ledger,
    stop: async () => {
      isStopped = true
      await ended(desk)
      await rm(folder, { recursive: true, force: true })
    },
  }
}

async function answers(url: string): Promise<boolean> {
  try {
    return (await fetch(url)).ok
  } catch {
    return false
  }
}

/** By itself, or by a signal. */
function hasEnded({ exitCode, signalCode }: ChildProcess): boolean {
  return exitCode !== null || signalCode !== null
}

/** Ask the process to end, and make it after 5 s. */
function ended(desk: ChildProcess): Promise<void> {
  return new Promise((resolve) => {
    if (hasEnded(desk)) return resolve()
    const timer = setTimeout(() => desk.kill('SIGKILL'), 5000)
    desk.once('exit', () => {
      clearTimeout(timer)
      resolve()
    })
    desk.kill('SIGTERM')
  })
}
