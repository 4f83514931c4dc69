/** Absences from the command line: announced, listed, taken back; the roll follows, and the trail tells. */
import { afterEach, beforeEach, expect, it } from 'vitest'
import { openSqlitePorts } from '../src/store/sqlite/openSqlitePorts.ts'
import { fillLedger } from './support/openDesk.ts'
import { smallNetwork } from './support/smallNetwork.ts'
import { type TestWorld, testWorld } from './support/testWorld.ts'

let world: TestWorld
let db: string
const small = smallNetwork(5)
beforeEach(async () => {
  world = await testWorld()
  db = world.path('ledger.db')
  const ports = await openSqlitePorts(db)
  await fillLedger(ports.ledger, small)
  await ports.ledger.close()
})
afterEach(() => world.remove())

const absence = (...words: string[]) => world.gaugewright('absence', ...words, '--db', db)
const inDays = (days: number) => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10)

it('absence announce, list and withdraw', async () => {
  const code = small.gauges[0]?.code ?? ''
  const [first, last] = [inDays(5), inDays(9)]
  expect((await absence('list')).out).toBe('No absence is announced.\n')
  expect((await absence('announce', code, first, last)).out).toContain(`${first}  ${last}  stands`)
  const { absences } = JSON.parse((await absence('list', '--json')).out)
  expect(absences).toMatchObject([{ code, firstDay: first, lastDay: last, withdrawnAtUtc: null }])
  expect((await absence('announce', code, last, first)).err).toMatch(/^ABSENCE_NOT_VALID {2}/)
  expect((await absence('announce', code, 'soon', last)).code).toBe(2)
  expect((await absence('withdraw', code, 'no-such')).err).toMatch(/^ABSENCE_UNKNOWN {2}/)
  expect((await absence('withdraw', code, absences[0].id)).out).toContain('taken back')
  expect((await absence('list')).out).toBe('No absence is announced.\n')
  expect((await absence('list', 'ZZZ')).err).toMatch(/^GAUGE_NOT_IN_NETWORK {2}/)
  const { entries } = JSON.parse((await world.gaugewright('audit', '--json', '--db', db)).out)
  const acts = entries.map(({ act, door }: Record<string, unknown>) => [act, door])
  expect(acts).toEqual([
    ['withdrawAbsence', 'command line'],
    ['announceAbsence', 'command line'],
  ])
})
