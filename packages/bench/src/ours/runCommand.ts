/** Runs the product's own command as a user would, from the built files (or another build: GAUGEWRIGHT_COMMAND). */
import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { lastWords } from './lastWords.ts'

export const commandPath =
  process.env.GAUGEWRIGHT_COMMAND ?? fileURLToPath(new URL('../../../desk/bin/gaugewright.js', import.meta.url))

export interface CommandRun {
  seconds: number
  /** Null when all went well, else the last line that the command wrote to its error output. */
  failure: string | null
  stdout: string
}

/** @param words  as after `gaugewright` */
export function runCommand(words: readonly string[]): Promise<CommandRun> {
  const started = performance.now()
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [commandPath, ...words], { stdio: ['ignore', 'pipe', 'pipe'] })
    let stdout = ''
    let errors = ''
    child.stdout.on('data', (text) => {
      stdout += text
    })
    child.stderr.on('data', (text) => {
      errors = (errors + text).slice(-4000)
    })
    child.on('close', (code) => {
      const failure = code === 0 ? null : (lastWords(errors) ?? `it ended with ${code}`)
      resolve({ seconds: (performance.now() - started) / 1000, failure, stdout })
    })
  })
}
