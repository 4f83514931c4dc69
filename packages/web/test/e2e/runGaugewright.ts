import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const program = fileURLToPath(new URL('../../../desk/bin/gaugewright.js', import.meta.url))
const source = fileURLToPath(new URL('../../../desk/src/main.ts', import.meta.url))
const start = process.env.GAUGEWRIGHT_E2E_SOURCE ? ['--conditions=source', '--import', 'tsx', source] : [program]

/** Runs one command beside the desk that is open. @throws {Error} with what it said, when it fails */
export function runGaugewright(words: readonly string[], typed = ''): Promise<string> {
  return new Promise((done, failed) => {
    const command = spawn(process.execPath, [...start, ...words], { stdio: ['pipe', 'pipe', 'pipe'] })
    let out = ''
    let err = ''
    command.stdout.on('data', (part) => {
      out += String(part)
    })
    command.stderr.on('data', (part) => {
      err += String(part)
    })
    command.once('exit', (code) => (code === 0 ? done(out) : failed(new Error(`${words.join(' ')}: ${err}`))))
    command.stdin.end(typed)
  })
}
