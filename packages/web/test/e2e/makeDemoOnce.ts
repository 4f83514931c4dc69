/** One demo for all browser tests, made before the first of them; each starts its desk on a copy (startDesk.ts). */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { demoYears, startWords } from './startDesk.ts'

/** Called by the test runner, for each of its projects. @returns what is to be done after the last test */
export function setup(): () => void {
  if (process.env.GAUGEWRIGHT_E2E_DEMO !== undefined) return () => undefined
  const folder = mkdtempSync(join(tmpdir(), 'gaugewright-e2e-demo-'))
  const ledger = join(folder, 'demo.db')
  const words = [...startWords, 'demo', '--db', ledger, ...demoYears, '--no-serve']
  const made = spawnSync(process.execPath, words, { encoding: 'utf8' })
  if (made.status !== 0) throw new Error(`the demo was not made (${words.join(' ')}): ${made.stderr.slice(-2000)}`)
  process.env.GAUGEWRIGHT_E2E_DEMO = ledger
  return () => rmSync(folder, { recursive: true, force: true })
}
