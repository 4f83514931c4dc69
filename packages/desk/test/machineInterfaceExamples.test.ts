/** The examples of docs/machine-interface.md, run as they stand there, against what is said to be answered. */
import { execFile } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { addKey } from '../src/app/addKey.ts'
import { openTestDesk } from './support/openDesk.ts'

const text = readFileSync(join(import.meta.dirname, '../../../docs/machine-interface.md'), 'utf8')
const examples = [...text.matchAll(/```sh\n([\s\S]*?)```\n\n```json\n([\s\S]*?)```/g)].map((match, index) => ({
  number: index + 1,
  command: match[1] as string,
  answer: JSON.parse(match[2] as string) as object,
}))
const curls = [...text.matchAll(/^curl /gm)].length

let desk: Awaited<ReturnType<typeof openTestDesk>>
let env: NodeJS.ProcessEnv

beforeAll(async () => {
  desk = await openTestDesk({}, 30)
  const [gauge] = await desk.ports.ledger.gauges('small')
  if (gauge === undefined) throw new Error('no gauge')
  await desk.ports.ledger.saveGauges(['RIDGE1', 'MILL2'].map((code) => ({ ...gauge, id: `g-${code}`, code })))
  const made = await addKey(desk.ports, { sender: 'docs', scopes: ['send', 'read'] }, { personId: null, door: 'desk' })
  if (!made.ok) throw new Error(made.problem.code)
  const url = await desk.app.listen({ port: 0, host: '127.0.0.1' })
  env = { ...process.env, DESK: url, KEY: made.value.secret }
})
afterAll(() => desk.app.close())

describe('the examples of docs/machine-interface.md', () => {
  it('are each followed by what is answered', () => {
    expect(examples).toHaveLength(curls)
    expect(curls).toBeGreaterThan(5)
  })

  it.each(examples)('number $number answers as it says', async ({ command, answer }) => {
    const { stdout } = await promisify(execFile)('sh', ['-c', command], { env })
    expect(JSON.parse(stdout)).toMatchObject(answer)
  })

  it('names every path that the desk describes', async () => {
    const { paths } = (await desk.app.inject({ method: 'GET', url: '/api/v1/openapi.json' })).json()
    for (const path of Object.keys(paths)) expect(text).toContain(`/api/v1${path.replace('{day}', 'DAY')}`)
  })
})
