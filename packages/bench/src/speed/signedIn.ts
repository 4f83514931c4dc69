/** People of an invented network who may use the desk, so that a session is looked up with every request, as in life. */
import { spawnSync } from 'node:child_process'
import { type Role, routes } from '@gaugewright/contract'
import { commandPath } from '../ours/runCommand.ts'

const mail = 'desk@ambrel.example'
const password = 'lantern over nine wet slates'

/** Makes a coordinator with a password. @throws {Error} with the command's own words */
export function makeCoordinator(ledger: string): void {
  const role: Role = 'coordinator'
  command(['people', 'add', 'Coordinator', '--role', role, '--mail', mail, '--db', ledger])
  command(['people', 'password', mail, '--db', ledger], `${password}\n`)
}

function command(words: readonly string[], input = ''): void {
  const { status, stderr } = spawnSync(process.execPath, [commandPath, ...words], { input, encoding: 'utf8' })
  if (status !== 0) throw new Error(stderr.trim())
}

/** @returns the session's cookie, `name=value` */
export async function signIn(url: string): Promise<string> {
  const answer = await fetch(`${url}${routes.signIn.path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ mail, password }),
  })
  const cookie = answer.headers.getSetCookie().find((text) => text.includes('session='))
  if (!answer.ok || cookie === undefined) throw new Error(`sign-in answered ${answer.status}: ${await answer.text()}`)
  await answer.arrayBuffer()
  return cookie.split(';')[0]!
}
