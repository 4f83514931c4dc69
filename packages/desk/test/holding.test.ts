/** Who is going quiet, whom to thank, and pages of rain: from readings to what the coordinator and the observers see. */
import type { Actor, Holding } from '@gaugewright/contract'
import { beforeAll, describe, expect, it } from 'vitest'
import { leaf } from '../src/app/leaf.ts'
import { rollOfGauge } from '../src/app/rollOfGauge.ts'
import type { Ports } from '../src/ports/ports.ts'
import { buildServer } from '../src/server/buildServer.ts'
import { openMemoryLedger } from '../src/store/memory/memoryLedger.ts'
import { fillLedger, portsOver } from './support/openDesk.ts'
import { smallNetwork } from './support/smallNetwork.ts'

const small = smallNetwork(150)
/** Answered nearly every morning until the 9th of May, and then no more. */
const LAST_OF_B2 = '2026-05-09'
let ports: Ports
let nowMs: number
let app: Awaited<ReturnType<typeof buildServer>>
/** A desk of its own for those that change something for good. */
async function openFresh(): Promise<void> {
  const ledger = openMemoryLedger()
  const readings = small.readings.filter(({ gaugeId, lastDay }) => gaugeId !== 'gB2' || lastDay <= LAST_OF_B2)
  await fillLedger(ledger, { ...small, readings })
  nowMs = Date.parse('2026-05-31T08:30:00Z')
  ports = portsOver(ledger, { clock: { nowUtc: () => new Date(nowMs).toISOString() } })
  app = await buildServer(ports, { screens: '/nowhere' })
}
beforeAll(openFresh)

const get = async (url: string) => await app.inject({ url })
const post = async (url: string, payload: object) =>
  (await app.inject({ method: 'POST', url, payload, headers: { 'content-type': 'application/json' } })).json()
const april = small.readings.filter(({ lastDay }) => lastDay.startsWith('2026-04'))
const reader = (gauge: string): Actor => ({ personId: 'p', role: 'observer', name: 'P', gauges: [gauge] })

describe('going quiet', () => {
  it('lists who broke their own habit, from the day on which they did, and nobody else', async () => {
    const { quiet, day } = (await get('/api/holding')).json() as Holding
    expect(day).toBe('2026-05-30')
    expect(quiet.map(({ code }) => code)).toEqual(['B2'])
    expect(quiet[0]).toMatchObject({ changedOn: '2026-05-10', since: 0, personId: null })
    expect(quiet[0]!.before).toBeGreaterThan(0.9)
    expect(quiet[0]!.text).toContain('Observer B2')
    expect(quiet[0]!.strip.endsWith('s'.repeat(21))).toBe(true)
  })

  it('is answered once, and taken back', async () => {
    const { quiet } = (await get('/api/holding')).json() as Holding
    const answer = await post('/api/holding/answer', { code: 'B2', key: quiet[0]!.key, how: 'not now' })
    expect(answer.quiet).toEqual([])
    expect(answer.answered).toMatchObject([{ code: 'B2', how: 'not now' }])
    expect((await post('/api/holding/answer', { undo: answer.answered[0].id })).quiet).toHaveLength(1)
  })

  it('blames nobody who said that they are away', async () => {
    await openFresh()
    await ports.absences.announce({
      id: 'a1',
      networkId: 'small',
      gaugeId: 'gB2',
      firstDay: '2026-05-10',
      lastDay: '2026-06-20',
      announcedBy: 'p-b2',
      announcedAtUtc: '2026-05-09T08:00:00Z',
    })
    const { quiet } = (await get('/api/holding')).json() as Holding
    expect(quiet).toEqual([])
  })
})

describe('the roll', () => {
  it('tells days, silence and hour of one gauge, to the desk and to its reader', async () => {
    await openFresh()
    const own = await rollOfGauge(ports, { gauge: 'B2', actor: reader('gB2') })
    expect(own).toMatchObject({
      ok: true,
      value: { currentStreak: 0, longestGap: { firstDay: '2026-05-10', days: 21 }, hour: { medianMin: 7 * 60 } },
    })
    expect(await rollOfGauge(ports, { gauge: 'B2', actor: reader('gA1') })).toMatchObject({
      problem: { code: 'GAUGE_NOT_YOURS' },
    })
  })
})

describe('a page of rain', () => {
  it('adds up to what was sent, and names no neighbour', async () => {
    const page = await get('/api/leaf.html?gauge=C4&period=2026-04')
    const sent = april.filter(({ gaugeId }) => gaugeId === 'gC4')
    const totalMm = sent.reduce((sum, { amountUm }) => sum + amountUm, 0) / 1000
    expect(page.statusCode).toBe(200)
    expect(page.body).toContain(totalMm.toFixed(1))
    expect(page.body).toContain('Observer C4')
    expect(page.body).not.toMatch(/Observer (?!C4)[A-F]\d|Hill (?!C4)[A-F]\d/)
  })

  it('tells which reading is still looked at, and ranks nothing by it', async () => {
    nowMs = Date.parse('2026-06-01T10:00:00Z')
    const [slip, sound] = await Promise.all(
      ['C3', 'C4'].map(async (gauge) => (await get(`/api/leaf.html?gauge=${gauge}&period=2026-05`)).body),
    )
    expect(slip).toContain('We are still looking at: May 31.')
    expect(sound).not.toContain('still looking')
  })

  it('is for its reader and the desk, within the record', async () => {
    expect(await leaf(ports, { gauge: 'C4', period: '2026-04', actor: reader('gA1') })).toMatchObject({
      problem: { code: 'GAUGE_NOT_YOURS' },
    })
    expect((await get('/api/leaf.html?gauge=C4&period=2019-04')).json().code).toBe('PERIOD_OUTSIDE_RECORD')
    expect((await get('/api/leaf.html?gauge=C4&period=2026-13')).json().code).toBe('ASK_NOT_VALID')
    expect((await get('/api/leaf.html?gauge=ZZ&period=2026-04')).json().code).toBe('GAUGE_NOT_IN_NETWORK')
  })
})

describe('the network letter', () => {
  /** Where the wettest day was wettest, and how much: `… 41.2 mm at Hill C3.` */
  const mostOn = (body: string) => / ([\d.,]+) mm at (Hill \w+)\./.exec(body)!.slice(1)

  it('counts what was sent, holds the words of the coordinator, and names nobody unless asked', async () => {
    const words = encodeURIComponent('Well read, all of you <3')
    const page = await get(`/api/network-letter.html?period=2026-04&words=${words}`)
    expect(page.statusCode).toBe(200)
    expect(page.body).toContain(new Intl.NumberFormat('en').format(april.length))
    expect(page.body).toContain('Well read, all of you &lt;3')
    expect(page.body).not.toContain('Observer ')
    expect((await get('/api/network-letter.html?period=2030-01')).json().code).toBe('PERIOD_OUTSIDE_RECORD')
  })

  it('publishes no slip that waits for a decision, and publishes it once somebody has looked', async () => {
    await openFresh()
    // C3 wrote the last morning, the wettest of the month, ten times too high.
    const slip = small.slips.find(({ kind }) => kind === 'decimal')!
    nowMs = Date.parse('2026-06-01T10:00:00Z')
    const before = await get('/api/network-letter.html?period=2026-05')
    expect(before.body).toContain('The wettest day was May 31')
    expect(Number(mostOn(before.body)[0])).toBeLessThan(slip.typedMm / 2)
    await post('/api/decisions', { readingId: `r-${slip.gaugeId}-2026-05-31`, verdict: 'stands', by: 'Cora' })
    const after = await get('/api/network-letter.html?period=2026-05')
    expect(mostOn(after.body)).toEqual([slip.typedMm.toFixed(1), 'Hill C3'])
  })
})
