/** The door for programs, through HTTP: keys, whole deliveries, each once, and what may be read. */
import type { AcceptedPage, BulkAnswer, KeyScope } from '@gaugewright/contract'
import { epochDayFromIso, isoFromEpochDay } from '@gaugewright/science'
import { Validator } from '@seriousme/openapi-schema-validator'
import { describe, expect, it } from 'vitest'
import { addKey } from '../src/app/addKey.ts'
import { openTestDesk } from './support/openDesk.ts'

const doer = { personId: null, door: 'command line' as const }

async function open(scopes: KeyScope[] = ['send', 'read', 'urgent']) {
  const desk = await openTestDesk()
  const made = await addKey(desk.ports, { sender: 'station network', scopes }, doer)
  if (!made.ok) throw new Error(made.problem.code)
  const { secret, key } = made.value
  const authorization = `Bearer ${secret}`
  const get = (path: string, headers: Record<string, string> = { authorization }) =>
    desk.app.inject({ method: 'GET', url: `/api/v1${path}`, headers })
  const post = (
    path: string,
    body: object,
    idempotencyKey = 'one',
    headers: Record<string, string> = { authorization },
  ) =>
    desk.app.inject({
      method: 'POST',
      url: `/api/v1${path}`,
      headers: { ...headers, 'idempotency-key': idempotencyKey },
      payload: body,
    })
  const [network] = await desk.ports.ledger.networks()
  const gauges = await desk.ports.ledger.gauges(network?.id ?? '')
  const range = await desk.ports.ledger.dayRange(network?.id ?? '')
  const codes = gauges.map(({ code }) => code)
  const countStored = async () => (await desk.ports.ledger.dayRange(network?.id ?? ''))?.stored ?? 0
  /** Days long before the record, on which nothing was read. */
  const early = (offset: number) => isoFromEpochDay(epochDayFromIso(range?.firstDay ?? '') - 1 - offset)
  return { ...desk, secret, key, get, post, codes, countStored, early, networkId: network?.id ?? '' }
}

describe('a key', () => {
  it('opens what it is for, and nothing without it, with another, or once it is revoked', async () => {
    const { get, post, app, ports, key, codes, early } = await open(['read'])
    expect((await get('/network')).statusCode).toBe(200)
    expect((await get('/network', {})).json().code).toBe('KEY_MISSING')
    expect((await get('/network', { authorization: `Bearer gauge_${'x'.repeat(43)}` })).json().code).toBe('KEY_REFUSED')
    const row = { gauge: codes[0], day: early(0), amount: '0', unit: 'in' }
    const sent = await post('/readings', { readings: [row] })
    expect([sent.statusCode, sent.json().code]).toEqual([403, 'KEY_SCOPE'])
    await ports.senders.revokeKey(key.id, ports.clock.nowUtc())
    const after = await get('/network')
    expect([after.statusCode, after.json().code]).toEqual([401, 'KEY_REFUSED'])
    await app.close()
  })

  it('is kept as its digest alone, and told once', async () => {
    const { app, ports, secret } = await open()
    expect(JSON.stringify(await ports.senders.keys())).not.toContain(secret)
    const listed = (await app.inject({ method: 'GET', url: '/api/keys' })).json()
    expect(listed.keys).toHaveLength(1)
    expect(JSON.stringify(listed)).not.toContain(secret)
    expect(listed.keys[0]).not.toHaveProperty('keyHash')
    await app.close()
  })

  it('is made and revoked at the desk, with a line in the trail each', async () => {
    const { app, ports } = await open()
    const made = await app.inject({
      method: 'POST',
      url: '/api/keys',
      payload: { sender: 'a school', scopes: ['send'] },
    })
    expect(made.json().secret).toMatch(/^gauge_[A-Za-z0-9_-]{43}$/)
    const revoked = await app.inject({ method: 'POST', url: '/api/keys/revoke', payload: { id: made.json().key.id } })
    expect(revoked.json().keys.at(-1).revokedAtUtc).not.toBeNull()
    const acts = (await ports.access.audit({ limit: 10 })).map(({ act, subject }) => [act, subject])
    expect(acts).toContainEqual(['addKey', made.json().key.id])
    expect(acts).toContainEqual(['revokeKey', made.json().key.id])
    await app.close()
  })

  it('that is wrong may be tried only so often from one address', async () => {
    const { app, get } = await open()
    const statuses: number[] = []
    for (let count = 0; count < 25; count++) statuses.push((await get('/network', {})).statusCode)
    expect(statuses.slice(0, 20).every((status) => status === 401)).toBe(true)
    expect(statuses.at(-1)).toBe(429)
    expect((await get('/network')).statusCode).toBe(200)
    await app.close()
  })
})

describe('a delivery of readings', () => {
  it('is stored exactly as it was typed, and each row answered', async () => {
    const { app, post, ports, codes, early, networkId } = await open()
    const readings = [
      { gauge: codes[0], day: early(0), amount: '0.40', unit: 'in' },
      { gauge: codes[1], day: early(0), amount: 'T', unit: 'in' },
      { gauge: codes[2], day: early(0), firstDay: early(2), amount: '12.4', unit: 'mm', remark: 'away' },
    ]
    const answer = (await post('/readings', { readings })).json() as BulkAnswer
    expect(answer).toMatchObject({ taken: true, stored: 3, refused: 0 })
    expect(answer.rows).toEqual([1, 2, 3].map((row) => ({ row, status: 'stored' })))
    const kept = await ports.ledger.readings(networkId, early(2), early(0))
    const byText = new Map(kept.map((reading) => [reading.text, reading]))
    expect(byText.get('0.40')).toMatchObject({ amountUm: 10_160, unit: 'in', door: 'machine', kind: 'daily' })
    expect(byText.get('T')).toMatchObject({ amountUm: 0, isTrace: true })
    expect(byText.get('12.4')).toMatchObject({ amountUm: 12_400, kind: 'multiday', firstDay: early(2), remark: 'away' })
    await app.close()
  })

  it('is answered alike when it is sent again, and adds nothing', async () => {
    const { app, post, codes, early, countStored } = await open()
    const body = { readings: [{ gauge: codes[0], day: early(0), amount: '0.40', unit: 'in' }] }
    const first = await post('/readings', body)
    const stored = await countStored()
    const [second, third] = await Promise.all([post('/readings', body), post('/readings', body)])
    expect(second?.body).toBe(first.body)
    expect(third?.body).toBe(first.body)
    expect(await countStored()).toBe(stored)
    await app.close()
  })

  it('sent twenty times at once is stored once', async () => {
    const { app, post, codes, early, countStored } = await open()
    const before = await countStored()
    const body = { readings: codes.map((gauge) => ({ gauge, day: early(0), amount: '0.11', unit: 'in' })) }
    const answers = await Promise.all(Array.from({ length: 20 }, () => post('/readings', body)))
    expect(new Set(answers.map((answer) => answer.body)).size).toBe(1)
    expect(await countStored()).toBe(before + codes.length)
    await app.close()
  })

  it('is refused where its idempotency key came before with another body, or where it has none', async () => {
    const { app, post, codes, early } = await open()
    const body = (amount: string) => ({ readings: [{ gauge: codes[0], day: early(0), amount, unit: 'in' }] })
    await post('/readings', body('0.40'))
    const other = await post('/readings', body('0.41'))
    expect([other.statusCode, other.json().code]).toEqual([422, 'IDEMPOTENCY_KEY_REUSED'])
    const none = await post('/readings', body('0.40'), '')
    expect([none.statusCode, none.json().code]).toEqual([400, 'IDEMPOTENCY_KEY_MISSING'])
    await app.close()
  })

  it('is taken whole or not at all, and says of every row why; the key may be used again', async () => {
    const { app, post, codes, early, countStored } = await open()
    const before = await countStored()
    const good = { gauge: codes[0], day: early(0), amount: '0.40', unit: 'in' }
    const readings = [
      good,
      { ...good, gauge: 'nobody' },
      { ...good, amount: '1,250' },
      { ...good, day: '2999-01-01' },
      { ...good, amount: '0.50' },
      { ...good, gauge: codes[1], firstDay: early(-1) },
    ]
    const sent = await post('/readings', { readings })
    expect([sent.statusCode, sent.json().code]).toEqual([422, 'ROWS_REFUSED'])
    const { rows } = sent.json().answer as BulkAnswer
    expect(rows.map(({ status, problem }) => problem?.code ?? status)).toEqual([
      'not taken',
      'GAUGE_UNKNOWN',
      'AMOUNT_DECIMAL_UNCLEAR',
      'DAY_NOT_VALID',
      'READING_TWICE',
      'SPAN_NOT_VALID',
    ])
    expect(await countStored()).toBe(before)
    const kept = (await post('/readings', { readings, keepGood: true })).json() as BulkAnswer
    expect(kept).toMatchObject({ taken: true, stored: 1, refused: 5 })
    expect(await countStored()).toBe(before + 1)
    await app.close()
  })

  it('that brings another amount corrects, and the same amount is there already', async () => {
    const { app, post, codes, early, ports, networkId } = await open()
    const body = (amount: string) => ({ readings: [{ gauge: codes[0], day: early(0), amount, unit: 'in' }] })
    await post('/readings', body('0.40'), 'a')
    expect((await post('/readings', body('0.400'), 'b')).json().rows).toEqual([{ row: 1, status: 'already' }])
    expect((await post('/readings', body('0.04'), 'c')).json().rows).toEqual([{ row: 1, status: 'correcting' }])
    const [current] = await ports.ledger.readings(networkId, early(0), early(0))
    const history = await ports.ledger.reading(networkId, current?.id ?? '')
    expect(history?.superseded.map(({ text }) => text)).toEqual(['0.40'])
    await app.close()
  })

  it('with a field that is not of the interface is refused, and not half understood', async () => {
    const { app, post, codes, early } = await open()
    const row = { gauge: codes[0], day: early(0), amount: '0.40', unit: 'in', amout: '1' }
    expect((await post('/readings', { readings: [row] })).json().code).toBe('ASK_NOT_VALID')
    expect((await post('/readings', { readings: [{ ...row, amout: undefined, amount: 0.4 }] })).json().code).toBe(
      'ASK_NOT_VALID',
    )
    await app.close()
  })
})

describe('SHEF', () => {
  it('is taken as the readings that it says, with what was passed over in the notes', async () => {
    const { app, post, ports, early, networkId } = await open()
    const [gauge] = await ports.ledger.gauges(networkId)
    await ports.ledger.saveGauges([{ ...(gauge as NonNullable<typeof gauge>), id: 'shef-1', code: 'ABCD1' }])
    const [reading] = await ports.ledger.readings(networkId, '2026-05-01', '2026-05-31')
    const clock = (reading?.endsAtUtc ?? '').slice(11, 16).replace(':', '')
    const line = `.A ABCD1 ${early(0).replaceAll('-', '')} Z DH${clock}/PP 38/SD 3/PPH 0.1\n`
    const answer = (await post('/shef', { text: line })).json() as BulkAnswer
    expect(answer).toMatchObject({ taken: true, stored: 1 })
    expect(answer.notes).toEqual(
      expect.arrayContaining([
        '1 passed over: SD: not rain',
        '1 passed over: not over whole days',
        expect.stringContaining('SHEF_DECIMAL_MISSING'),
      ]),
    )
    const kept = await ports.ledger.readings(networkId, early(0), early(0))
    expect(kept.map(({ amountUm, gaugeId }) => [gaugeId, amountUm])).toEqual([['shef-1', 9652]])
    await app.close()
  })

  it('with a line that cannot be read is not taken, and the line is told', async () => {
    const { app, post, countStored } = await open()
    const before = await countStored()
    const sent = await post('/shef', { text: '.A ABCD1 20269901 Z DH12/PP 0.10\nnonsense here\n' })
    expect(sent.statusCode).toBe(422)
    expect(
      sent
        .json()
        .answer.rows.map(({ row, problem }: { row: number; problem: { code: string } }) => [row, problem.code]),
    ).toEqual([
      [1, 'SHEF_DATE'],
      [2, 'SHEF_OUTSIDE'],
    ])
    expect(await countStored()).toBe(before)
    await app.close()
  })
})

describe('what may be read', () => {
  it('leads through the accepted record page by page, to its end', async () => {
    const { app, get, ports, networkId } = await open()
    const range = await ports.ledger.dayRange(networkId)
    let path: string | null = `/accepted?from=${range?.firstDay}&to=${range?.lastDay}`
    let rows = 0
    let pages = 0
    while (path !== null) {
      const page: AcceptedPage = (await get(path)).json()
      rows += page.rows.length
      pages++
      path = page.next?.replace('/api/v1', '') ?? null
    }
    expect(rows).toBe(range?.readings)
    expect(pages).toBeGreaterThan(3)
    await app.close()
  })

  it('names no observer and no exact position', async () => {
    const { app, get, ports, networkId } = await open()
    const names = (await ports.ledger.gauges(networkId)).flatMap(({ observerName }) => observerName ?? [])
    const told = await Promise.all(
      ['/gauges', '/days/latest/roll', '/days/latest/findings', '/accepted'].map((path) => get(path)),
    )
    for (const answer of told) {
      expect(answer.statusCode).toBe(200)
      for (const name of names) expect(answer.body).not.toContain(name)
    }
    for (const { latDeg, lonDeg } of told[0]?.json().gauges ?? []) {
      expect([latDeg, lonDeg]).toEqual([latDeg, lonDeg].map((deg) => Math.round(deg * 100) / 100))
    }
    await app.close()
  })

  it('gives urgent reports to a key for them alone', async () => {
    const { app, get } = await open(['urgent'])
    expect((await get('/urgent')).json().items).toEqual([])
    expect((await get('/gauges')).json().code).toBe('KEY_SCOPE')
    await app.close()
  })
})

describe('the description', () => {
  it('is valid OpenAPI 3.1 by its published schema', async () => {
    const { app, get } = await open()
    const answer = await get('/openapi.json', {})
    const result = await new Validator().validate(answer.json())
    expect(result.errors ?? []).toEqual([])
    expect(result.valid).toBe(true)
    expect(answer.json().openapi).toBe('3.1.0')
    await app.close()
  })

  it('names every way that the server has, and no other', async () => {
    const { app, get } = await open()
    const { paths } = (await get('/openapi.json', {})).json()
    for (const [path, ways] of Object.entries(paths as Record<string, object>)) {
      for (const way of Object.keys(ways)) {
        const url = `/api/v1${path.replaceAll(/\{(\w+)\}/g, ':$1')}`
        expect(app.hasRoute({ method: way.toUpperCase() as 'GET', url })).toBe(true)
      }
    }
    expect(Object.keys(paths)).toHaveLength(8)
    await app.close()
  })

  it('has a page to read it that asks nothing of any other host and runs no program', async () => {
    const { app, get } = await open()
    const page = await get('', {})
    expect(page.headers['content-type']).toContain('text/html')
    expect(page.headers['content-security-policy']).toContain("default-src 'self'")
    expect(page.body).not.toMatch(/<script|style=|https?:\/\/|<style/)
    const links = [...page.body.matchAll(/(?:href|src)="((?!data:)[^"#][^"]*)"/g)].map((match) => match[1] as string)
    for (const link of links) expect((await app.inject({ method: 'GET', url: link })).statusCode).toBe(200)
    const ids = new Set([...page.body.matchAll(/ id="([^"]+)"/g)].map((match) => match[1]))
    for (const [, id] of page.body.matchAll(/href="#([^"]+)"/g)) expect(ids).toContain(id)
    await app.close()
  })
})
