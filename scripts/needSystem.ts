/**
 * `needSystem.ts node chromium [-- COMMAND …]`: makes sure that they are there, then runs the command, if any, with
 * CHROMIUM_PATH set. One line and exit 1 when something is missing and may not be installed from here.
 */
import { spawnSync } from 'node:child_process'
import { type Need, need } from './system/need.ts'

const words = process.argv.slice(2)
const dashes = words.indexOf('--')
const needs = dashes === -1 ? words : words.slice(0, dashes)
const [command, ...args] = dashes === -1 ? [] : words.slice(dashes + 1)

const environment = { ...process.env }
for (const what of needs) {
  if (what !== 'node' && what !== 'chromium') stop(`needSystem knows node and chromium, not "${what}".`, 2)
  const answer = need(what as Need)
  if (answer.ok) Object.assign(environment, answer.environment)
  else stop(answer.advice, 1)
}
if (command !== undefined) {
  const { status, error } = spawnSync(command, args, { stdio: 'inherit', env: environment })
  if (error) stop(`${command} could not be started: ${error.message}`, 1)
  process.exitCode = status ?? 1
}

function stop(message: string, exitCode: number): never {
  console.error(message)
  process.exit(exitCode)
}
