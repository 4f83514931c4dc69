import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { workerEntry } from './workerEntry.ts'

const MODULES = 400
const TIMES = 60
const stopEarly = fileURLToPath(new URL('../../../test/support/stopEarly.mjs', import.meta.url))
let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'gaugewright-threads-'))
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }')
  // Many modules, so that a stop often meets the moment at which they are linked.
  for (let at = 0; at < MODULES; at++) {
    const next = at + 1 < MODULES ? `export * from './part${at + 1}.js'\n` : ''
    writeFileSync(join(folder, `part${at}.js`), `${next}export const value${at} = ${at}\n`)
  }
  writeFileSync(join(folder, 'thread.js'), "export * from './part0.js'\nexport function workOn() {}\n")
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('workerEntry', () => {
  it('starts built threads so that stopping one at any instant of its start leaves the desk alive', () => {
    const { file, execArgv } = workerEntry('thread', pathToFileURL(join(folder, 'caller.js')).href)
    const ran = spawnSync(process.execPath, [stopEarly, fileURLToPath(file), String(TIMES), ...execArgv], {
      encoding: 'utf8',
    })
    expect(ran.stdout.trim(), ran.stderr.slice(0, 600)).toBe('lived')
    expect(ran.signal).toBeNull()
  })
})
