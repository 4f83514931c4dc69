/** The door for programs under `kill -9`: what was answered is there, and what is sent again after it is there once. */
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { openDatabase } from '../src/store/sqlite/openDatabase.ts'
import { openSqliteLedger } from '../src/store/sqlite/openSqliteLedger.ts'
import { fillLedger } from './support/openDesk.ts'
import { smallNetwork } from './support/smallNetwork.ts'
import { type TestWorld, testWorld } from './support/testWorld.ts'

const main = fileURLToPath(new URL('../src/main.ts', import.meta.url))
const DELIVERIES = 400
const ROWS = 25
let world: TestWorld
let db: string
let key: string
let codes: string[]

beforeAll(async () => {
  world = await testWorld()
  db = world.path('kill.db')
  const small = smallNetwork(30)
  const ledger = await openSqliteLedger(db)
  await fillLedger(ledger, small)
  await ledger.close()
  codes = small.gauges.map(({ code }) => code).slice(0, ROWS)
  key = (await world.gaugewright('key', 'add', 'killed', '--db', db)).out.trim()
})
afterAll(() => world.remove())

async function serve(): Promise<{ child: ChildProcess; url: string }> {
  const words = ['--conditions=source', '--import', 'tsx', main, 'serve', '--db', db, '--port', '0', '--no-open']
  const cwd = fileURLToPath(new URL('..', import.meta.url))
  const child = spawn(process.execPath, words, { stdio: ['ignore', 'pipe', 'inherit'], cwd })
  let said = ''
  for await (const part of child.stdout ?? []) {
    said += part
    const url = /http:\/\/127\.0\.0\.1:\d+/.exec(said)?.[0]
    if (url !== undefined) return { child, url }
  }
  throw new Error(`the desk did not open: ${said}`)
}

/** Each delivery is of a day of its own, long before the record. */
const bodyOf = (delivery: number) => {
  const day = new Date(Date.UTC(2020, 0, 1) + delivery * 86_400_000).toISOString().slice(0, 10)
  return JSON.stringify({
    readings: codes.map((gauge, index) => ({ gauge, day, amount: `${index}.${delivery % 10}`, unit: 'mm' })),
  })
}

async function send(url: string, delivery: number): Promise<string | null> {
  const headers = {
    authorization: `Bearer ${key}`,
    'content-type': 'application/json',
    'idempotency-key': `delivery-${delivery}`,
  }
  const sent = fetch(`${url}/api/v1/readings`, { method: 'POST', headers, body: bodyOf(delivery) })
  return await sent.then(
    async (answer) => (answer.status === 200 ? await answer.text() : null),
    () => null,
  )
}

function counted(): { readings: number; deliveries: number } {
  const database = openDatabase(db)
  const count = (sql: string) => (database.prepare(sql).get() as { n: number }).n
  const found = {
    readings: count("select count(*) as n from reading where door = 'machine'"),
    deliveries: count('select count(*) as n from delivery'),
  }
  database.close()
  return found
}

it('10,000 readings in flight: each answered delivery is there whole, and all are there once after they are sent again', async () => {
  const first = await serve()
  const answers = new Map<number, string>()
  const ended = once(first.child, 'exit')
  const sent = Array.from({ length: DELIVERIES }, async (_, delivery) => {
    const answer = await send(first.url, delivery)
    if (answer === null) return
    answers.set(delivery, answer)
    if (answers.size === DELIVERIES / 4) first.child.kill('SIGKILL')
  })
  await Promise.all(sent)
  expect((await ended)[1]).toBe('SIGKILL')
  expect(answers.size).toBeGreaterThanOrEqual(DELIVERIES / 4)
  expect(answers.size).toBeLessThan(DELIVERIES)
  const kept = counted()
  expect(kept.readings).toBe(kept.deliveries * ROWS)
  expect(kept.deliveries).toBeGreaterThanOrEqual(answers.size)

  const second = await serve()
  for (let delivery = 0; delivery < DELIVERIES; delivery++) {
    const again = await send(second.url, delivery)
    expect(JSON.parse(again ?? '{}')).toMatchObject({ taken: true, stored: ROWS })
    const before = answers.get(delivery)
    if (before !== undefined) expect(again).toBe(before)
  }
  second.child.kill('SIGTERM')
  await once(second.child, 'exit')
  expect(counted()).toEqual({ readings: DELIVERIES * ROWS, deliveries: DELIVERIES })
}, 180_000)
