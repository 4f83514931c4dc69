/** The program as a process of its own: signals, pipes, exit codes. */
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { openSqliteLedger } from '../src/store/sqlite/openSqliteLedger.ts'
import { fillLedger } from './support/openDesk.ts'
import { smallNetwork } from './support/smallNetwork.ts'
import { type TestWorld, testWorld } from './support/testWorld.ts'

const main = fileURLToPath(new URL('../src/main.ts', import.meta.url))
let world: TestWorld
let db: string

beforeAll(async () => {
  world = await testWorld()
  db = world.path('process.db')
  const ledger = await openSqliteLedger(db)
  await fillLedger(ledger, smallNetwork(40))
  await ledger.close()
})
afterAll(() => world.remove())

function gaugewright(...words: string[]): ChildProcess {
  return spawn(process.execPath, ['--conditions=source', '--import', 'tsx', main, ...words], {
    stdio: ['ignore', 'pipe', 'pipe'],
    cwd: fileURLToPath(new URL('..', import.meta.url)),
  })
}

async function firstLine(child: ChildProcess): Promise<string> {
  let text = ''
  for await (const part of child.stdout ?? []) {
    text += part
    if (text.includes('\n')) break
  }
  return text
}

it.each(['SIGINT', 'SIGTERM'] as const)(
  'serve closes cleanly on %s, in the middle of its first learning too',
  async (signal) => {
    const child = gaugewright('serve', '--db', db, '--port', '0', '--no-open')
    const line = await firstLine(child)
    expect(line).toContain('http://127.0.0.1:')
    child.kill(signal)
    const [code] = await once(child, 'exit')
    expect(code).toBe(0)
  },
)

it('a reader that goes away ends the work quietly', async () => {
  const child = gaugewright('export', 'accepted', '--db', db)
  let errors = ''
  child.stderr?.on('data', (text) => {
    errors += text
  })
  await firstLine(child)
  child.stdout?.destroy()
  const [code] = await once(child, 'exit')
  expect([code, errors.replace(/^.*amounts in mm\.\n$/, '')]).toEqual([0, ''])
})

it('a failure is one line on the error stream and exit code 1', async () => {
  const child = gaugewright('day', '--db', world.path('absent.db'))
  let errors = ''
  child.stderr?.on('data', (text) => {
    errors += text
  })
  const [code] = await once(child, 'close')
  expect(code).toBe(1)
  expect(errors).toMatch(/^LEDGER_NOT_FOUND {2}.+\n$/)
})
