/** Urgent reports through the use cases: filed, weighed, seen, passed on, closed, taken back. */
import type { UrgentNow, UrgentSettings } from '@gaugewright/contract'
import { beforeEach, describe, expect, it } from 'vitest'
import type { Answer } from '../src/app/answer.ts'
import { closeUrgent } from '../src/app/closeUrgent.ts'
import { codedUrgent } from '../src/app/codedUrgent.ts'
import { fileUrgent } from '../src/app/fileUrgent.ts'
import { markSeen } from '../src/app/markSeen.ts'
import { passOn } from '../src/app/passOn.ts'
import { setUrgentSettings } from '../src/app/setUrgentSettings.ts'
import { undoUrgent } from '../src/app/undoUrgent.ts'
import { usualUrgentSettings } from '../src/app/urgent/usualUrgentSettings.ts'
import { urgentNow } from '../src/app/urgentNow.ts'
import type { Ports } from '../src/ports/ports.ts'
import { openMemoryLedger } from '../src/store/memory/memoryLedger.ts'
import { fillLedger, portsOver } from './support/openDesk.ts'
import { smallNetwork } from './support/smallNetwork.ts'
import { filingId, hailFiling } from './support/urgentFilings.ts'

let ports: Ports
let clockUtc: string
beforeEach(async () => {
  const ledger = openMemoryLedger()
  await fillLedger(ledger, smallNetwork(3))
  clockUtc = '2026-05-31T08:30:00Z'
  ports = portsOver(ledger, { clock: { nowUtc: () => clockUtc } })
})

function valueOfAnswer<T>(answer: Answer<T>): T {
  if (!answer.ok) throw new Error(`${answer.problem.code}: ${answer.problem.seen}`)
  return answer.value
}
const codeOf = (answer: Answer<unknown>): string => (answer.ok ? 'fine' : answer.problem.code)
const list = async (hours = 24): Promise<UrgentNow> => valueOfAnswer(await urgentNow(ports, { hours }))
const set = (change: Partial<UrgentSettings>) =>
  setUrgentSettings(ports, { settings: { ...usualUrgentSettings, ...change }, by: 'coordinator' })
const order = async (): Promise<string[]> => (await list()).items.map(({ report }) => report.id)

describe('filing', () => {
  it('is on the list at once, new, with its place, severity, energy and the time from stone to desk', async () => {
    expect(valueOfAnswer(await fileUrgent(ports, hailFiling(1, 44.45)))).toEqual({
      id: filingId(1),
      receivedAtUtc: clockUtc,
      already: false,
    })
    const { items, newCount, lastEvent, medianSeconds } = await list()
    expect({ newCount, lastEvent, toDesk: medianSeconds.toDesk }).toEqual({ newCount: 1, lastEvent: 1, toDesk: 600 })
    expect(items[0]).toMatchObject({
      state: 'new',
      latDeg: 44.1,
      gauge: null,
      severity: { level: 'severe', ratio: expect.closeTo(1.75, 9), basis: 'stone size' },
      secondsToDesk: 600,
      secondsToSeen: null,
    })
    // 6.6 J by Heymsfield 2018 and 15.0 J as a smooth sphere lie within.
    expect(items[0]?.energyJ?.low).toBeLessThan(6.7)
    expect(items[0]?.energyJ?.high).toBeCloseTo(15, 0)
  })

  it('twice is once; another content under its id is refused', async () => {
    await fileUrgent(ports, hailFiling(1, 30))
    expect(valueOfAnswer(await fileUrgent(ports, hailFiling(1, 30))).already).toBe(true)
    await expect(fileUrgent(ports, hailFiling(1, 31))).rejects.toThrow('URGENT_ID_TAKEN')
    expect((await list()).items).toHaveLength(1)
  })

  it('what is told later about it stands in its place, under the first id', async () => {
    await fileUrgent(ports, hailFiling(1, 30))
    clockUtc = '2026-05-31T08:34:00Z'
    await fileUrgent(ports, hailFiling(2, 55, { updates: filingId(1) }))
    const { items } = await list()
    expect(items).toHaveLength(1)
    expect(items[0]).toMatchObject({ report: { id: filingId(1) }, severity: { level: 'significant' } })
    // The time from stone to desk is that of the first filing.
    expect(items[0]?.secondsToDesk).toBe(600)
  })

  it('refuses a time ahead of the clock, one long ago, and a gauge that is not there', async () => {
    const at = (seenAtUtc: string) => fileUrgent(ports, hailFiling(3, 30, { seenAtUtc }))
    expect(codeOf(await at('2026-05-31T09:30:00Z'))).toBe('URGENT_TIME_OUTSIDE')
    expect(codeOf(await at('2026-05-20T09:30:00Z'))).toBe('URGENT_TIME_OUTSIDE')
    // A phone's clock may run a few minutes ahead: taken, and no negative time is told.
    expect(codeOf(await at('2026-05-31T08:35:00Z'))).toBe('fine')
    expect((await list()).items[0]?.secondsToDesk).toBeNull()
    const gone = hailFiling(4, 30, { where: { kind: 'gauge', gaugeId: 'gZ9' } })
    expect(codeOf(await fileUrgent(ports, gone))).toBe('GAUGE_NOT_IN_NETWORK')
  })
})

describe('the list', () => {
  it('puts first what would change a warning most', async () => {
    await fileUrgent(ports, hailFiling(1, 12))
    await fileUrgent(ports, hailFiling(2, 55, { where: { kind: 'place', latDeg: 44.3, lonDeg: 7.2 } }))
    await fileUrgent(ports, hailFiling(3, 30, { where: { kind: 'gauge', gaugeId: 'gC3' } }))
    expect(await order()).toEqual([2, 3, 1].map(filingId))
    await closeUrgent(ports, { reportId: filingId(2), by: 'B', why: 'checked by telephone' })
    expect(await order()).toEqual([3, 1, 2].map(filingId))
  })

  it('neighbours who saw the same make a report likelier, and come together as a storm with a track', async () => {
    const passing = (number: number, minutes: number) =>
      fileUrgent(
        ports,
        hailFiling(number, 28 + number, {
          // Eastward at 57 km/h.
          where: { kind: 'place', latDeg: 44.1, lonDeg: 7.2 + 0.012 * minutes },
          seenAtUtc: `2026-05-31T08:${String(minutes).padStart(2, '0')}:00Z`,
        }),
      )
    await passing(1, 0)
    expect((await list()).items[0]?.plausibility.near).toBe(0)
    await passing(2, 10)
    await passing(3, 20)
    await passing(4, 28)
    const { items, storms } = await list()
    const second = items.find(({ report }) => report.id === filingId(3))
    expect(second?.plausibility.near).toBeGreaterThan(1)
    expect(second?.plausibility.odds).toBeGreaterThan(second?.plausibility.priorOdds ?? 1)
    expect(storms).toHaveLength(1)
    expect(storms[0]?.reportIds).toHaveLength(4)
    expect(storms[0]?.largestStoneMm).toBe(32)
    expect(Math.abs((storms[0]?.track?.towardDeg ?? 0) - 90)).toBeLessThan(2)
    expect(storms[0]?.track?.speedKmPerH).toBeCloseTo(57.4, 0)
  })

  it('a report that nobody has looked at stays however old; the others go after a day', async () => {
    await fileUrgent(ports, hailFiling(1, 30))
    await fileUrgent(ports, hailFiling(2, 31))
    await markSeen(ports, { reportId: filingId(2), by: 'B' })
    clockUtc = '2026-06-05T08:30:00Z'
    expect(await order()).toEqual([filingId(1)])
    expect((await list(240)).items).toHaveLength(2)
  })
})

describe('what a desk does', () => {
  beforeEach(async () => {
    await fileUrgent(ports, hailFiling(1, 44.45, { where: { kind: 'gauge', gaugeId: 'gC3' } }))
    clockUtc = '2026-05-31T08:31:30Z'
  })
  const report = async () => (await list()).items[0]

  it('seen by whom and when; the same person twice is one look, another is a second', async () => {
    await markSeen(ports, { reportId: filingId(1), by: 'B' })
    await markSeen(ports, { reportId: filingId(1), by: 'B' })
    await markSeen(ports, { reportId: filingId(1), by: 'C' })
    expect(await report()).toMatchObject({ state: 'seen', secondsToSeen: 690 })
    expect((await report())?.seenBy.map(({ by }) => by)).toEqual(['B', 'C'])
  })

  it('new, seen, passed on, closed: each taken back gives the state before, and both stay', async () => {
    await markSeen(ports, { reportId: filingId(1), by: 'B' })
    await passOn(ports, { reportId: filingId(1), by: 'B', form: 'storm report', destination: null })
    await closeUrgent(ports, { reportId: filingId(1), by: 'B', why: 'storm over' })
    expect((await report())?.state).toBe('closed')
    expect(codeOf(await closeUrgent(ports, { reportId: filingId(1), by: 'B', why: 'again' }))).toBe(
      'URGENT_ALREADY_CLOSED',
    )
    const back = async (eventId: string | undefined) =>
      codeOf(await undoUrgent(ports, { eventId: eventId ?? '', by: 'B' }))
    const closed = (await report())?.closed?.eventId
    expect(await back(closed)).toBe('fine')
    expect((await report())?.state).toBe('passed on')
    expect(await back(closed)).toBe('URGENT_ALREADY_UNDONE')
    expect(await back((await report())?.passedOn[0]?.eventId)).toBe('fine')
    expect((await report())?.state).toBe('seen')
    expect(await back((await report())?.seenBy[0]?.eventId)).toBe('fine')
    expect((await report())?.state).toBe('new')
    expect(await back(filingId(1))).toBe('URGENT_EVENT_UNKNOWN')
    expect(await ports.urgent.lastNumber('small')).toBe(7)
  })

  it('the storm report has event, size, place, county and source in their columns', async () => {
    const { text, cut } = valueOfAnswer(await codedUrgent(ports, { reportId: filingId(1), form: 'storm report' }))
    const line = text.split('\n').findIndex((words) => words.slice(12, 16) === 'HAIL')
    const [first = '', second = ''] = text.split('\n').slice(line)
    expect(first.slice(0, 8)).toBe('0820 AM ')
    expect(first.slice(29, 53).trim()).toBe('HILL C3')
    expect(second.slice(0, 10)).toBe('05/31/2026')
    expect(second.slice(12, 29).trim()).toBe('M1.75 INCH')
    expect(second.slice(29, 48).trim()).toBe('SOUTH')
    expect(second.slice(53)).toBe('PUBLIC')
    expect(cut).toEqual([])
    expect(text).not.toContain('Witness')
  })

  it('nothing goes out by itself, and only to a destination that the office has set', async () => {
    const to = (destination: string | null) =>
      passOn(ports, { reportId: filingId(1), by: 'B', form: 'storm report', destination })
    expect(codeOf(await to('Warning desk'))).toBe('DESTINATION_UNKNOWN')
    await set({ destinations: [{ name: 'Warning desk', way: 'file', to: '/srv/watched' }] })
    expect(await ports.outbox.list('small', { limit: 10 })).toEqual([])
    expect(codeOf(await to('Warning desk'))).toBe('fine')
    const [message] = await ports.outbox.list('small', { limit: 10 })
    expect(message).toMatchObject({ state: 'waiting', purpose: 'urgent report', by: 'B', content: { kind: 'file' } })
    expect(await report()).toMatchObject({ state: 'passed on', secondsToPassedOn: 690 })
    // Pressed again it is not sent twice, and what has gone out cannot be called back.
    await to('Warning desk')
    expect(await ports.outbox.list('small', { limit: 10 })).toHaveLength(1)
    const { eventId } = (await report())?.passedOn[0] ?? { eventId: '' }
    expect(codeOf(await undoUrgent(ports, { eventId, by: 'B' }))).toBe('URGENT_GONE_OUT')
  })

  it('a webhook is told the report without any name', async () => {
    await set({ destinations: [{ name: 'Hook', way: 'webhook', to: 'https://desk.invalid/in' }] })
    await passOn(ports, { reportId: filingId(1), by: 'B', form: 'storm report', destination: 'Hook' })
    const [message] = await ports.outbox.list('small', { limit: 10 })
    const body = message?.content.kind === 'webhook' ? message.content.body : ''
    expect(JSON.parse(body)).toMatchObject({ form: 'storm report', report: { seen: { kind: 'hail' } } })
    expect(body).not.toContain('Witness')
  })
})

describe('the rule that passes on', () => {
  const rule = { atLeast: 'severe', oddsAtLeast: 0.5, form: 'storm report', destination: 'Desk' } as const
  const destinations = [{ name: 'Desk', way: 'mail' as const, to: 'desk@office.invalid' }]
  const sent = async () => (await ports.outbox.list('small', { limit: 10 })).length

  it('sends what is grave and plausible enough, once, in the name of the rule', async () => {
    await set({ destinations, passOnRule: rule })
    await fileUrgent(ports, hailFiling(1, 12))
    expect(await sent()).toBe(0)
    await fileUrgent(ports, hailFiling(2, 30))
    await fileUrgent(ports, hailFiling(2, 30))
    expect(await sent()).toBe(1)
    const item = (await list()).items.find(({ report }) => report.id === filingId(2))
    expect(item?.passedOn[0]).toMatchObject({ by: 'rule', way: 'mail', to: 'Desk' })
  })

  it('a neighbour may make an earlier report plausible enough', async () => {
    await set({ destinations, passOnRule: { ...rule, oddsAtLeast: 0.93 } })
    await fileUrgent(ports, hailFiling(1, 30))
    const before = (await list()).items[0]?.plausibility.odds ?? 1
    expect(before).toBeLessThan(0.93)
    expect(await sent()).toBe(0)
    await fileUrgent(ports, hailFiling(2, 31, { where: { kind: 'place', latDeg: 44.11, lonDeg: 7.21 } }))
    await fileUrgent(ports, hailFiling(3, 33, { where: { kind: 'place', latDeg: 44.1, lonDeg: 7.22 } }))
    expect((await list()).items.every(({ plausibility }) => plausibility.odds > 0.93)).toBe(true)
    expect(await sent()).toBe(3)
  })

  it('settings that contradict each other are refused, and the same again adds none', async () => {
    expect(codeOf(await set({ significantHailMm: 20 }))).toBe('URGENT_SETTINGS_NOT_VALID')
    expect(codeOf(await set({ passOnRule: rule }))).toBe('URGENT_SETTINGS_NOT_VALID')
    expect(codeOf(await set({ destinations: [{ name: 'A', way: 'webhook', to: 'file:///etc' }] }))).toBe(
      'URGENT_SETTINGS_NOT_VALID',
    )
    expect(codeOf(await set({ destinations: [{ name: 'A', way: 'file', to: 'relative' }] }))).toBe(
      'URGENT_SETTINGS_NOT_VALID',
    )
    await set({ severeHailMm: 20 })
    await set({ severeHailMm: 20 })
    expect(await ports.urgent.settings('small')).toHaveLength(1)
  })
})
