/** My gauge through its routes: readings sent once, the check at entry and what it does not tell, absence, own record. */
import { randomUUID } from 'node:crypto'
import type {
  AnnouncedAbsence,
  CheckedEntry,
  MyGauge,
  MyRecord,
  NetworkAbsences,
  NewReading,
  SentReadings,
} from '@gaugewright/contract'
import { epochDayFromIso, isoFromEpochDay } from '@gaugewright/science'
import { beforeAll, describe, expect, it } from 'vitest'
import { checkEntry } from '../src/app/checkEntry.ts'
import { evidenceForReading } from '../src/app/evidenceForReading.ts'
import { myGauge } from '../src/app/myGauge.ts'
import { sendReadings } from '../src/app/sendReadings.ts'
import { openTestDesk } from './support/openDesk.ts'

/** Hill F6 has not reported on the last morning, 2026-05-31; the desk's clock stands at 08:30 UTC. */
const SILENT = 'F6'
const DAY = '2026-05-31'
const READ_AT = '2026-05-31T07:10:00Z'

let desk: Awaited<ReturnType<typeof openTestDesk>>
beforeAll(async () => {
  desk = await openTestDesk()
})

const headers = { host: '127.0.0.1', 'content-type': 'application/json' }
async function post<T>(path: string, payload: unknown): Promise<{ status: number; body: T & { code?: string } }> {
  const answer = await desk.app.inject({ method: 'POST', url: path, headers, payload: JSON.stringify(payload) })
  return { status: answer.statusCode, body: answer.json() }
}
async function get<T>(path: string): Promise<T & { code?: string }> {
  return (await desk.app.inject({ method: 'GET', url: path, headers })).json()
}
function reading(change: Partial<NewReading> = {}): NewReading {
  return {
    id: randomUUID(),
    firstDay: DAY,
    lastDay: DAY,
    readAtUtc: READ_AT,
    text: '7.7',
    unit: 'mm',
    remark: null,
    confirmed: null,
    corrects: null,
    ...change,
  }
}
const send = (gauge: string, readings: NewReading[]) => post<SentReadings>('/api/my/readings', { gauge, readings })
const stored = (gaugeId: string, from: string, to = from) =>
  desk.ports.ledger.readingsOfGauge('small', gaugeId, from, to)
const check = (gauge: string, text: string, day = DAY) =>
  post<CheckedEntry>('/api/my/check', { gauge, firstDay: day, lastDay: day, text, unit: 'mm' })

describe('the check at entry', () => {
  it('asks back about ten times the rain around, with a tenth of it as the alternative, and tells nothing else', async () => {
    const near = (await stored('gF5', DAY))[0]!.amountUm / 1000
    const typed = (Math.round(near * 10) * 10) / 10
    const right = await check(SILENT, near.toFixed(1))
    expect(right.body).toEqual({ question: null })
    const slipped = await check(SILENT, typed.toFixed(1))
    const amounts = slipped.body.question?.alternatives.map(({ amountUm }) => amountUm)
    expect(amounts).toContain(Math.round((typed / 10) * 10) * 100)
    expect(Object.keys(slipped.body)).toEqual(['question'])
    for (const one of slipped.body.question?.alternatives ?? [])
      expect(Object.keys(one).sort()).toEqual(['amountUm', 'kind'])
  })

  it('holds only four amounts of a gauge and day against the neighbours, so that nobody feels out what they had', async () => {
    const gauge = 'A4'
    const answers: (boolean | undefined)[] = []
    for (const text of ['0', '0.3', '1.1', '2.3', '0.6', '0.7']) {
      answers.push((await check(gauge, text)).body.question !== null)
    }
    // A zero on a wet morning is asked about; by the gauge's own climate a light amount never is.
    expect(answers[0]).toBe(true)
    expect(answers.slice(4)).toEqual([false, false])
    // What was answered once is answered again, though the tries are used up.
    expect((await check(gauge, '0')).body.question !== null).toBe(true)
  })

  it('falls back on the gauge’s own climate for a day that no neighbour has reported', async () => {
    expect((await check(SILENT, '6.2', '2026-06-01')).body).toEqual({ question: null })
    const wild = await check(SILENT, '271', '2026-06-01')
    expect(wild.body.question).not.toBeNull()
  })
})

describe('readings sent from a phone', () => {
  it('are stored once, however often they are sent, with what was typed and what was asked back', async () => {
    const confirmed = { about: ['decimal' as const], firstText: '77.0' }
    const one = reading({ text: '17.7', remark: 'Thunder at 3', confirmed })
    const first = await send(SILENT, [one])
    expect(first.body).toMatchObject({ received: [{ id: one.id, isNew: true }] })
    expect((await send(SILENT, [one])).body).toMatchObject({ received: [{ id: one.id, isNew: false }] })
    const kept = await stored('gF6', DAY)
    expect(kept).toHaveLength(1)
    expect(kept[0]).toMatchObject({
      id: one.id,
      text: '17.7',
      amountUm: 17_700,
      door: 'phone',
      remark: 'Thunder at 3',
      confirmed,
    })
    expect(kept[0]?.endsAtUtc).toBe('2026-05-31T07:10:00Z')
    // It begins where the gauge was emptied the day before.
    expect(kept[0]?.startsAtUtc).toBe('2026-05-30T07:00:00Z')
  })

  it('twenty deliveries of the same reading at once leave one', async () => {
    const day = '2026-05-29'
    const again = (await stored('gB2', day))[0]
    expect(again).toBeDefined()
    const one = reading({
      firstDay: day,
      lastDay: day,
      readAtUtc: `${day}T07:20:00Z`,
      text: '3.3',
      corrects: again!.id,
    })
    const answers = await Promise.all(Array.from({ length: 20 }, () => send('B2', [one])))
    expect(answers.map(({ status }) => status)).toEqual(Array(20).fill(200))
    const found = await desk.ports.ledger.reading('small', one.id)
    expect(found?.superseded).toHaveLength(1)
    expect(await stored('gB2', day)).toHaveLength(1)
  })

  it('refuse another amount for a day that has one, and keep both where it is a correction', async () => {
    const before = (await stored('gC1', DAY))[0]!
    const other = reading({ text: '99.9' })
    expect((await send('C1', [other])).body.code).toBe('ENTRY_DAY_HAS_READING')
    expect((await stored('gC1', DAY))[0]?.id).toBe(before.id)
    const correction = reading({ text: '9.9', corrects: before.id })
    expect((await send('C1', [correction])).status).toBe(200)
    const now = await desk.ports.ledger.reading('small', correction.id)
    expect(now?.superseded.map(({ id }) => id)).toEqual([before.id])
  })

  it('add up fills of the tube exactly, and refuse one above what the tube holds', async () => {
    const day = '2026-06-01'
    desk.ports.clock.nowUtc = () => '2026-06-01T08:30:00Z'
    const at = { firstDay: day, lastDay: day, readAtUtc: `${day}T07:00:00Z`, unit: 'in' as const }
    expect((await send('D1', [reading({ ...at, text: '1.00 + 1.20' })])).body.code).toBe('FILL_ABOVE_TUBE')
    expect((await send('D1', [reading({ ...at, text: '1.00 + 1.00 + 0.34' })])).status).toBe(200)
    // 2.34 in = 234 × 254 µm
    expect((await stored('gD1', day))[0]).toMatchObject({ amountUm: 59_436, text: '1.00 + 1.00 + 0.34', unit: 'in' })
    desk.ports.clock.nowUtc = () => '2026-05-31T08:30:00Z'
  })

  it('take dry days of a stretch together, all or none', async () => {
    const from = epochDayFromIso('2026-05-31') + 1
    desk.ports.clock.nowUtc = () => '2026-06-05T08:00:00Z'
    const days = [0, 1, 2].map((ahead) => isoFromEpochDay(from + ahead))
    const stretch = days.map((day) => reading({ firstDay: day, lastDay: day, readAtUtc: null, text: '0' }))
    const spoiled = [
      ...stretch,
      reading({ firstDay: '2026-06-04', lastDay: '2026-06-04', readAtUtc: null, text: 'half' }),
    ]
    expect((await send('E2', spoiled)).body.code).toBe('AMOUNT_UNREADABLE')
    expect(await stored('gE2', days[0]!, days[2])).toEqual([])
    expect((await send('E2', stretch)).status).toBe(200)
    expect((await stored('gE2', days[0]!, days[2])).map(({ amountUm }) => amountUm)).toEqual([0, 0, 0])
    desk.ports.clock.nowUtc = () => '2026-05-31T08:30:00Z'
  })

  it.each([
    ['a time that has not come', { readAtUtc: '2026-05-31T09:30:00Z' }, 'ENTRY_IN_FUTURE'],
    ['a day that the time does not belong to', { firstDay: '2026-05-30', lastDay: '2026-05-30' }, 'ENTRY_DAY_DIFFERS'],
    ['days out of order', { firstDay: '2026-06-01' }, 'SPAN_NOT_VALID'],
    ['an amount with two points', { text: '1.2.3' }, 'AMOUNT_TWO_POINTS'],
    ['a correction of a reading of another gauge', { text: '1.9', corrects: 'r-gA1-2026-05-31' }, 'READING_UNKNOWN'],
  ])('refuse %s', async (_, change, code) => {
    expect((await send('E6', [reading(change as Partial<NewReading>)])).body.code).toBe(code)
  })
})

describe('own gauges only', () => {
  const observer = { personId: 'p1', role: 'observer' as const, name: 'Ines Holt', gauges: ['gA1'] }

  it('an observer reaches their own gauge, and is told the same of another and of none', async () => {
    expect((await myGauge(desk.ports, { actor: observer, gauge: 'a1' })).ok).toBe(true)
    const tell = async (gauge: string) => {
      const answer = await myGauge(desk.ports, { actor: observer, gauge })
      return answer.ok ? 'ok' : answer.problem.code
    }
    expect(await tell('A2')).toBe('GAUGE_NOT_YOURS')
    expect(await tell('ZZ')).toBe('GAUGE_NOT_YOURS')
    const sent = await sendReadings(desk.ports, { actor: observer, gauge: 'A2', readings: [reading()] })
    expect(sent.ok).toBe(false)
    const checked = await checkEntry(desk.ports, {
      actor: observer,
      gauge: 'A2',
      firstDay: DAY,
      lastDay: DAY,
      text: '1.0',
      unit: 'mm',
    })
    expect(checked.ok).toBe(false)
  })

  it('the page of a gauge names no other gauge', async () => {
    const page = await get<MyGauge>('/api/my/gauges/A1')
    const text = JSON.stringify(page)
    for (const { id, name } of desk.small.gauges) if (id !== 'gA1') expect(text).not.toContain(name)
    expect(page.readings.length).toBeGreaterThan(40)
    expect(page.climate?.wetScore).toHaveLength(12 * 89)
  })
})

describe('a confirmed reading at the desk', () => {
  it('is believed more than the same reading unconfirmed', async () => {
    const slip = desk.small.slips.find(({ kind }) => kind === 'decimal')!
    const before = await evidenceForReading(desk.ports, { readingId: `r-${slip.gaugeId}-${DAY}` })
    const other = await openTestDesk()
    const typed = slip.typedMm.toFixed(1)
    await other.ports.ledger.appendReadings('small', [
      {
        ...(await other.ports.ledger.readingsOfGauge('small', slip.gaugeId, DAY, DAY))[0]!,
        id: 'again',
        amountUm: Math.round(slip.typedMm * 1000) + 100,
        text: typed,
        confirmed: { about: ['decimal'], firstText: typed },
      },
    ])
    const after = await evidenceForReading(other.ports, { readingId: 'again' })
    if (!before.ok || !after.ok) throw new Error('no evidence')
    const decimal = (evidence: typeof before.value) =>
      (evidence.explanations.find(({ kind }) => kind === 'decimal')?.odds ?? 0) / evidence.standsOdds
    expect(decimal(before.value)).toBeGreaterThan(5 * decimal(after.value))
  })
})

describe('absence and record', () => {
  it('an absence announced ahead comes back, and the roll of its days shows the gauge away', async () => {
    const ask = { gauge: 'A5', firstDay: '2026-06-03', lastDay: '2026-06-09' }
    expect((await post('/api/my/absences', ask)).body).toEqual({
      absences: [{ id: expect.any(String), firstDay: '2026-06-03', lastDay: '2026-06-09' }],
    })
    expect(await desk.ports.ledger.absences('small', '2026-06-05', '2026-06-05')).toHaveLength(1)
    const [early, far] = [{ lastDay: '2026-06-02' }, { firstDay: '2027-07-01', lastDay: '2027-07-02' }]
    for (const change of [early, far]) {
      expect((await post('/api/my/absences', { ...ask, ...change })).body.code).toBe('ABSENCE_NOT_VALID')
    }
  })

  it('an absence taken back ahead leaves the roll, is taken back once, and is not another gauge’s to take back', async () => {
    const ask = { gauge: 'A6', firstDay: '2026-06-03', lastDay: '2026-06-09' }
    const { absences } = (await post<AnnouncedAbsence>('/api/my/absences', ask)).body
    const absence = absences[0]?.id ?? ''
    const other = await post('/api/my/absences/withdraw', { gauge: 'B6', absence })
    expect([other.status, other.body.code]).toEqual([404, 'ABSENCE_UNKNOWN'])
    for (let time = 0; time < 2; time++) {
      const { status, body } = await post('/api/my/absences/withdraw', { gauge: 'A6', absence })
      expect([status, body]).toEqual([200, { absences: [] }])
    }
    expect((await get<MyGauge>('/api/my/gauges/A6')).absences).toEqual([])
    const history = await get<NetworkAbsences>('/api/absences?gauge=a6')
    expect(history.absences).toMatchObject([{ id: absence, code: 'A6', withdrawnAtUtc: expect.any(String) }])
    const trail = await desk.ports.access.audit({ limit: 50 })
    const own = trail.filter(({ subject }) => subject === 'gA6').map(({ act }) => act)
    expect(own).toEqual(['withdrawAbsence', 'announceAbsence'])
  })

  it('an absence taken back halfway keeps the days that passed, for which one total is still owed', async () => {
    // 08:30 on the 31st: that morning can still be read, the 30th has passed.
    const ask = { gauge: 'B5', firstDay: '2026-05-28', lastDay: '2026-06-09' }
    const { absences } = (await post<AnnouncedAbsence>('/api/my/absences', ask)).body
    await post('/api/my/absences/withdraw', { gauge: 'B5', absence: absences[0]?.id })
    const days = await desk.ports.absences.ofDays('small', '2026-05-01', '2026-06-30')
    expect(days.filter(({ gaugeId }) => gaugeId === 'gB5')).toMatchObject([
      { firstDay: '2026-05-28', lastDay: '2026-05-30' },
    ])
  })

  it('the record adds up to the readings: month, months, years and rank agree with one another', async () => {
    const record = await get<MyRecord>('/api/my/gauges/A3/record')
    const own = desk.small.readings.filter(({ gaugeId }) => gaugeId === 'gA3')
    const sum = (from: string) => own.filter(({ lastDay }) => lastDay >= from).reduce((a, b) => a + b.amountUm, 0)
    expect(record.month.totalUm).toBe(sum('2026-05-01'))
    expect(record.year.totalUm).toBe(sum('2026-01-01'))
    expect(record.months.reduce((a, b) => a + b.totalUm, 0)).toBe(record.year.totalUm)
    expect(record.years.at(-1)).toMatchObject({
      year: 2026,
      totalUm: record.year.totalUm,
      toDateUm: record.year.totalUm,
    })
    const larger = own.filter(({ amountUm }) => amountUm > own.at(-1)!.amountUm).length
    expect(record.rank).toMatchObject({ day: DAY, place: larger + 1 })
    expect(record.monthDays).toHaveLength(31)
  })
})
