/** `gaugewright urgent`: the list and what is done with a report, on a real ledger file. */
import type { UrgentNow } from '@gaugewright/contract'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { fileUrgent } from '../src/app/fileUrgent.ts'
import { openSqlitePorts } from '../src/store/sqlite/openSqlitePorts.ts'
import { fillLedger, portsOver } from './support/openDesk.ts'
import { smallNetwork } from './support/smallNetwork.ts'
import { type TestWorld, testWorld } from './support/testWorld.ts'
import { filingId, hailFiling } from './support/urgentFilings.ts'

let world: TestWorld
let db: string
beforeAll(async () => {
  world = await testWorld()
  db = world.path('ledger.db')
  const opened = await openSqlitePorts(db)
  await fillLedger(opened.ledger, smallNetwork(3))
  const ports = portsOver(opened.ledger, opened)
  await fileUrgent(ports, hailFiling(1, 30))
  await fileUrgent(ports, hailFiling(2, 55, { where: { kind: 'gauge', gaugeId: 'gC3' } }))
  await opened.ledger.close()
})
afterAll(() => world.remove())

const urgent = (...words: string[]) => world.gaugewright('urgent', ...words, '--db', db)
const asJson = async (...words: string[]): Promise<UrgentNow> => JSON.parse((await urgent(...words, '--json')).out)

it('lists the reports, the gravest first, with what, where, how likely and the time to the desk', async () => {
  const { code, out } = await urgent()
  expect(code).toBe(0)
  expect(out).toContain('Small Hills: 2 urgent reports, 2 new')
  const lines = out.split('\n')
  expect(lines[2]).toMatch(/significant +new +hail 55 mm \(ruler\) +C3 Hill C3 .* 600 s .*/)
  expect(lines[3]).toMatch(/severe +new +hail 30 mm \(ruler\) +Upper meadow/)
})

it('seen, passed on, closed and undone by commands; each answers with the list', async () => {
  expect((await urgent('seen', filingId(1), '--by', 'B')).out).toMatch(/severe +seen/)
  expect((await urgent('pass-on', filingId(1))).out).toMatch(/severe +passed on/)
  const closed = await asJson('close', filingId(1), '--why', 'over')
  const item = closed.items.find(({ report }) => report.id === filingId(1))
  expect(item?.state).toBe('closed')
  expect((await urgent('undo', item?.closed?.eventId ?? '')).out).toMatch(/severe +passed on/)
})

it('the coded text comes alone, ready to be sent through a pipe', async () => {
  const { out } = await urgent('code', filingId(2))
  expect(out.startsWith('PRELIMINARY LOCAL STORM REPORT\n')).toBe(true)
  expect((await urgent('code', filingId(2), '--as', 'SHEF')).code).toBe(1)
})

it('trouble is one line with its code; bad usage ends with 2', async () => {
  const unknown = await urgent('seen', 'nothing')
  expect([unknown.code, unknown.err]).toEqual([1, expect.stringMatching(/^URGENT_UNKNOWN {2}.*\n$/)])
  expect((await urgent('close', filingId(1))).code).toBe(2)
  expect((await urgent('--hours', 'many')).code).toBe(2)
  expect((await urgent('pass-on', filingId(1), '--to', 'Nowhere')).err).toContain('DESTINATION_UNKNOWN')
})
