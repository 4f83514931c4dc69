/** An offer from the public page to the first reading, through the doors that people use; and what robots try. */
import { createHash, randomUUID } from 'node:crypto'
import type { Reading } from '@gaugewright/science'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { sweepOffers } from '../src/app/people/sweepOffers.ts'
import type { Ports } from '../src/ports/ports.ts'
import { buildServer } from '../src/server/buildServer.ts'
import { openMemoryLedger } from '../src/store/memory/memoryLedger.ts'
import { fillLedger, portsOver } from './support/openDesk.ts'
import { smallNetwork } from './support/smallNetwork.ts'

const small = smallNetwork(5)
let ports: Ports
let app: Awaited<ReturnType<typeof buildServer>>
let nowMs: number

beforeEach(async () => {
  nowMs = Date.parse('2026-05-31T08:30:00Z')
  const ledger = openMemoryLedger()
  await fillLedger(ledger, small)
  ports = portsOver(ledger, { clock: { nowUtc: () => new Date(nowMs).toISOString() } })
  app = await buildServer(ports, { screens: '/nowhere' })
  await ports.access.savePerson({
    id: 'cora',
    name: 'Cora',
    role: 'coordinator',
    mail: 'cora@desk.example',
    language: 'en',
    gauges: [],
    addedAtUtc: '2026-01-01T00:00:00Z',
  })
  await post('/api/offer-page', { isOpen: true, keepMonths: 12, en: 'Come and read.', es: 'Venga a leer.' })
})
afterEach(() => app.close())

const post = async (url: string, payload: object, remoteAddress = '127.0.0.1') => {
  const answer = await app.inject({
    method: 'POST',
    url,
    payload,
    remoteAddress,
    headers: { 'content-type': 'application/json' },
  })
  return { status: answer.statusCode, body: answer.json() }
}
const get = async (url: string) => (await app.inject({ url })).json()
const later = (seconds: number): void => {
  nowMs += seconds * 1000
}

/** What the page's own program does: tries numbers until the digest begins with enough zero bits. */
function solve(ticket: string, zeroBits: number): string {
  for (let nonce = 0; ; nonce++) {
    const digest = createHash('sha256').update(`${ticket}.${nonce}`).digest()
    if (digest.readUInt32BE(0) >>> (32 - zeroBits) === 0) return String(nonce)
  }
}
async function ticket() {
  const page = await get('/api/offer/page')
  return { ticket: page.ticket.ticket, nonce: solve(page.ticket.ticket, page.ticket.zeroBits) }
}
const words = {
  name: 'Pia Example',
  mail: 'Pia@Home.example',
  phone: '555 0100',
  language: 'en',
  place: 'Behind the mill',
  yard: 'some trees',
  yardWords: 'A pear tree to the west',
  readingTime: '07:00',
  hours: '',
}
const offerOf = async (change: object = {}) => ({
  id: randomUUID(),
  offer: { ...words, ...change },
  ...(await ticket()),
  website: '',
})
const mails = async () =>
  (await ports.outbox.list('small', { limit: 100 })).map(({ content }) =>
    content.kind === 'mail' ? content : { to: '', subject: '', text: '' },
  )
const people = async () => await get('/api/people/desk')

describe('an offer', () => {
  it('lands on People at once, answers the person with a link of their own, and tells the coordinator', async () => {
    const heard: string[] = []
    ports.journal.listen((networkId) => heard.push(networkId))
    const ask = await offerOf()
    later(5)
    expect(await post('/api/offer', ask)).toEqual({ status: 200, body: { received: true } })
    expect(heard).toEqual(['small'])
    const { candidates } = await people()
    expect(candidates).toMatchObject([
      {
        id: ask.id,
        state: 'offered',
        next: 'answered',
        door: 'public page',
        offer: { mail: 'pia@home.example', place: 'Behind the mill' },
      },
    ])
    const sent = await mails()
    expect(sent.map(({ to }) => to).sort()).toEqual(['cora@desk.example', 'pia@home.example'])
    expect(sent.find(({ to }) => to.startsWith('cora'))?.text).toContain('Behind the mill')
    const link = /\/offer#mine=(\S+)/.exec(sent.find(({ to }) => to.startsWith('pia'))!.text)![1]!
    const mine = await post('/api/offer/mine', { secret: link })
    expect(mine.body).toMatchObject({ state: 'offered', isAddressConfirmed: true, offer: { name: 'Pia Example' } })
    expect((await people()).candidates[0].addressConfirmedAtUtc).toBe(new Date(nowMs).toISOString())
    expect(JSON.stringify(await ports.journal.ofKinds('small', ['own link']))).not.toContain(link)
  })

  it('twice is one, and more within the hour tell the coordinator once', async () => {
    const ask = await offerOf()
    later(5)
    await post('/api/offer', ask)
    await post('/api/offer', ask)
    const other = await offerOf({ name: 'Quin Example', mail: 'quin@home.example' })
    later(5)
    await post('/api/offer', other)
    expect((await people()).candidates).toHaveLength(2)
    expect((await mails()).filter(({ to }) => to.startsWith('cora'))).toHaveLength(1)
    later(3600)
    const third = await offerOf({ name: 'Rae Example', mail: 'rae@home.example' })
    later(5)
    await post('/api/offer', third)
    expect((await mails()).filter(({ to }) => to.startsWith('cora'))).toHaveLength(2)
  })

  it('names what is missing, and keeps nothing', async () => {
    const ask = await offerOf({ mail: null, phone: null })
    later(5)
    expect((await post('/api/offer', ask)).body).toMatchObject({
      code: 'ASK_NOT_VALID',
      seen: expect.stringContaining('mail address or a telephone'),
    })
    expect((await post('/api/offer', await offerOf({ mail: 'pia at home' }))).body.seen).toContain('not a mail address')
    expect((await post('/api/offer', await offerOf({ place: ' ' }))).body.seen).toContain('where the gauge would stand')
    expect((await people()).candidates).toEqual([])
  })

  it('goes from state to state by what people do, with times measured, to the first reading', async () => {
    const ask = await offerOf()
    later(5)
    await post('/api/offer', ask)
    const about = `candidate ${ask.id}`
    later(2 * 3600 - 5)
    await post('/api/contacts', { about, way: 'note', text: 'Neighbour of the miller' })
    expect((await people()).candidates[0].state).toBe('offered')
    await post('/api/contacts', { about, way: 'call', text: 'Glad to help' })
    expect((await people()).candidates[0]).toMatchObject({ state: 'answered', next: 'site agreed' })
    await post('/api/offers/state', { candidateId: ask.id, state: 'site agreed' })
    later(86_400)
    const given = await post('/api/offers/gauge', {
      candidateId: ask.id,
      gauge: { name: 'Mill garden', latDeg: 45.1, lonDeg: 11.2, elevationM: 210 },
    })
    expect(given.body).toMatchObject({ state: 'gauge in hand', gauge: { name: 'Mill garden' } })
    const gauge = (await ports.ledger.gauge('small', given.body.gauge.id))!
    expect(gauge).toMatchObject({ observerName: 'Pia Example', openedOn: '2026-06-02' })
    const person = await ports.access.personByMail('pia@home.example')
    expect(person).toMatchObject({ role: 'observer', gauges: [gauge.id] })
    later(2 * 86_400)
    const reading: Reading = {
      ...small.readings[0]!,
      id: 'first',
      gaugeId: gauge.id,
      firstDay: '2026-06-03',
      lastDay: '2026-06-03',
      receivedAtUtc: new Date(nowMs).toISOString(),
      supersedes: null,
    }
    await ports.ledger.appendReadings('small', [reading])
    const { candidates, figures } = await people()
    expect(candidates[0]).toMatchObject({ state: 'reading', next: null, firstReadingOn: '2026-06-03' })
    expect(figures.medianHoursToAnswer).toBeCloseTo(2, 2)
    // Offered on 31 May at 8:30, read for the day of 3 June.
    expect(figures.medianDaysToReading).toBeCloseTo(2.65, 1)
    const log = await get(`/api/contacts?about=person ${person!.id}`)
    expect(log.contacts.map(({ way }: { way: string }) => way)).toEqual(['call', 'note', 'letter'])
  })

  it('every step can be taken back: with the gauge go the new person and the new gauge, unless something was read', async () => {
    const added = await post('/api/offers', { offer: words })
    const candidateId = added.body.id
    await post('/api/offers/state', { candidateId, state: 'answered' })
    const moved = await post('/api/offers/state', { candidateId, state: 'site agreed' })
    const step = moved.body.events.at(-1).id
    expect((await post('/api/offers/undo', { candidateId, eventId: step })).body.state).toBe('answered')
    expect((await post('/api/offers/undo', { candidateId, eventId: step })).body.state).toBe('site agreed')
    const given = await post('/api/offers/gauge', { candidateId, gauge: { name: 'New', latDeg: 45, lonDeg: 11 } })
    const gaugeStep = given.body.events.at(-1).id
    const back = await post('/api/offers/undo', { candidateId, eventId: gaugeStep })
    expect(back.body).toMatchObject({ state: 'site agreed', gauge: null, personId: null })
    expect(await ports.access.personByMail('pia@home.example')).toBeNull()
    expect((await ports.ledger.gauge('small', given.body.gauge.id))?.closedOn).toBe('2026-05-31')
    const again = await post('/api/offers/gauge', { candidateId, gauge: { name: 'Newer', latDeg: 45, lonDeg: 11 } })
    await ports.ledger.appendReadings('small', [
      { ...small.readings[0]!, id: 'r', gaugeId: again.body.gauge.id, supersedes: null },
    ])
    const refused = await post('/api/offers/undo', { candidateId, eventId: again.body.events.at(-1).id })
    expect(refused.body.code).toBe('GAUGE_HAS_READINGS')
  })

  it('a gauge that somebody reads is not given again; a free one is', async () => {
    const { id: candidateId } = (await post('/api/offers', { offer: words })).body
    await ports.access.savePerson({
      id: 'ada',
      name: 'Ada',
      role: 'observer',
      mail: null,
      language: 'en',
      gauges: ['gA1'],
      addedAtUtc: '2026-01-01T00:00:00Z',
    })
    const codeOf = async (id: string) => (await ports.ledger.gauge('small', id))!.code
    expect((await post('/api/offers/gauge', { candidateId, gauge: { code: await codeOf('gA1') } })).body).toMatchObject(
      { code: 'GAUGE_NOT_FREE', seen: expect.stringContaining('Ada') },
    )
    expect((await post('/api/offers/gauge', { candidateId, gauge: { code: await codeOf('gB2') } })).body.gauge.id).toBe(
      'gB2',
    )
  })

  it('closed needs a why, and is erased when its time is over', async () => {
    const { id: candidateId } = (await post('/api/offers', { offer: words })).body
    expect((await post('/api/offers/state', { candidateId, state: 'closed' })).body.code).toBe('OFFER_WHY_MISSING')
    await post('/api/offers/state', { candidateId, state: 'closed', why: 'Moved away' })
    later(300 * 86_400)
    expect(await sweepOffers(ports)).toBe(0)
    later(80 * 86_400)
    expect(await sweepOffers(ports)).toBe(1)
    expect(await ports.journal.about('small', [`candidate ${candidateId}`])).toEqual([])
  })

  it('its person can put it right, draw the yard, and take it back, by the link alone', async () => {
    const ask = await offerOf()
    later(5)
    await post('/api/offer', ask)
    const secret = /#mine=(\S+)/.exec((await mails()).find(({ to }) => to.startsWith('pia'))!.text)![1]!
    await post('/api/offer/mine/change', { secret, offer: { ...words, place: 'Before the mill' } })
    expect((await people()).candidates[0].offer.place).toBe('Before the mill')
    const square = [0, 1, 2, 3].map((k) => ({ xM: k === 1 || k === 2 ? 20 : 0, yM: k > 1 ? 15 : 0 }))
    const plan = {
      outline: square,
      obstacles: [],
      hazards: [],
      slopeDeg: null,
      gauge: { at: { xM: 8, yM: 7 }, rimM: 0.6, hasWindShield: false },
    }
    expect((await post('/api/offer/mine/yard', { secret, id: 's1', plan })).body.plan.gauge.at.xM).toBe(8)
    const site = await get(`/api/site?about=candidate ${ask.id}`)
    expect(site.surveys).toMatchObject([{ exposure: { class: 2 }, surveyedOn: '2026-05-31' }])
    const tall = {
      ...plan,
      obstacles: [
        {
          id: 't',
          kind: 'tree',
          name: 'Fir',
          shape: { form: 'round', center: { xM: 2, yM: 2 }, radiusM: 1, topM: 900 },
        },
      ],
    }
    expect((await post('/api/offer/mine/yard', { secret, id: 's2', plan: tall })).body).toMatchObject({
      code: 'OBSTACLE_TOO_TALL',
      seen: 'obstacle 1 (Fir): 900',
    })
    expect((await post('/api/offer/mine', { secret: `${secret.slice(0, -1)}x` })).body.code).toBe(
      'OFFER_LINK_NOT_VALID',
    )
    expect((await post('/api/offer/mine/withdraw', { secret })).body).toEqual({ gone: true })
    expect((await people()).candidates).toEqual([])
    expect(JSON.stringify(await mails())).not.toContain('Behind the mill pia')
    expect((await post('/api/offer/mine', { secret })).body.code).toBe('OFFER_LINK_NOT_VALID')
  })
})

describe('robots', () => {
  it('are refused without work, before their time, with a forged, an old or a used ticket', async () => {
    let address = 0
    const code = async (ask: object) => (await post('/api/offer', ask, `198.51.100.${++address}`)).body.seen
    const ask = await offerOf()
    expect(await code(ask)).toContain('too soon')
    later(5)
    expect(await code({ ...ask, nonce: '' })).toContain('puzzle')
    expect(await code({ ...ask, ticket: ask.ticket.replace(/.$/, ask.ticket.endsWith('A') ? 'B' : 'A') })).toContain(
      'forged',
    )
    expect(await code({ ...ask, ticket: `1.2.${'a'.repeat(43)}` })).toContain('forged')
    expect((await post('/api/offer', ask)).status).toBe(200)
    expect(await code({ ...ask, id: randomUUID() })).toContain('used')
    const old = await offerOf()
    later(25 * 3600)
    expect(await code(old)).toContain('too late')
    expect((await people()).candidates).toHaveLength(1)
  })

  it('who fill the field that nobody sees are thanked, and nothing is kept', async () => {
    const ask = await offerOf()
    later(5)
    expect(await post('/api/offer', { ...ask, website: 'http://spam.example' })).toEqual({
      status: 200,
      body: { received: true },
    })
    expect((await people()).candidates).toEqual([])
    expect(await mails()).toEqual([])
  })

  it('from one address come a few an hour, and learn nothing about who is known', async () => {
    for (let count = 0; count < 5; count++) {
      const ask = await offerOf({ mail: count === 0 ? 'cora@desk.example' : 'new@home.example' })
      later(5)
      expect(await post('/api/offer', ask, '198.51.100.7')).toEqual({ status: 200, body: { received: true } })
    }
    const sixth = await offerOf()
    later(5)
    expect((await post('/api/offer', sixth, '198.51.100.7')).status).toBe(429)
    expect((await post('/api/offer', sixth, '203.0.113.9')).status).toBe(200)
    expect(
      (await post('/api/offer', { ...sixth, offer: { ...words, yardWords: 'x'.repeat(20_000) } }, '203.0.113.8'))
        .status,
    ).toBe(413)
  })

  it('find nothing open where the page is closed, and nothing of People', async () => {
    await post('/api/offer-page', { isOpen: false, keepMonths: 12, en: 'x', es: 'y' })
    const ask = await offerOf()
    later(5)
    expect((await post('/api/offer', ask)).body.code).toBe('OFFERS_CLOSED')
    const elsewhere = await buildServer(ports, { screens: '/nowhere', mayOpen: false })
    for (const url of [
      '/api/people/desk',
      '/api/people/live',
      '/api/letters',
      '/api/site?about=gauge A',
      '/api/offer-page',
    ]) {
      expect((await elsewhere.inject({ url })).statusCode, url).toBe(401)
    }
    expect((await elsewhere.inject({ url: '/api/offer/page' })).json()).not.toHaveProperty('candidates')
    await elsewhere.close()
  })
})

describe('letters', () => {
  it('are filled for the person, edited, sent once, and stand in the log', async () => {
    const { id } = (await post('/api/offers', { offer: words })).body
    const about = `candidate ${id}`
    const preview = await get(`/api/letters/preview?about=${about}&step=questions`)
    expect(preview).toMatchObject({ to: 'pia@home.example', canSend: false })
    expect(preview.text).toContain('Hello Pia Example,')
    const letter = { about, step: 'questions', id: 'l1', subject: preview.subject, text: preview.text }
    expect((await post('/api/letters/send', letter)).body.code).toBe('MAIL_NOT_SET')
    const settings = {
      host: '127.0.0.1',
      port: 25,
      security: 'none',
      user: null,
      from: 'd@desk.example',
      fromName: 'D',
    } as const
    await ports.outgoingSettings.setMail('small', { settings, by: 'P', setAtUtc: '2026-05-01T08:00:00Z' })
    expect((await post('/api/letters/send', { ...letter, text: 'Hi {occasion}' })).body.code).toBe('LETTER_HAS_GAPS')
    await post('/api/letters/send', letter)
    const sent = await post('/api/letters/send', letter)
    expect(sent.body.contacts).toMatchObject([{ way: 'letter', outgoing: { state: 'waiting' } }])
    const [mail] = await mails()
    expect(mail!.text).toMatch(/http:\/\/localhost:80\/offer#mine=[\w-]{43}/)
    expect((await people()).candidates[0].state).toBe('answered')
    const withdrawn = await post('/api/contacts/withdraw', { about, contactId: sent.body.contacts[0].id })
    expect(withdrawn.body.code).toBe('CONTACT_UNKNOWN')
  })

  it('templates keep their versions, and know what may stand in braces', async () => {
    const set = { step: 'thanks', language: 'es', subject: 'Gracias', text: 'Hola {name}' }
    expect((await post('/api/letters', { ...set, text: 'Hola {nombre} y {foto}' })).body).toMatchObject({
      code: 'LETTER_PLACEHOLDER_UNKNOWN',
      seen: '{nombre}, {foto}',
    })
    await post('/api/letters', set)
    const { templates } = (await post('/api/letters', { ...set, text: 'Buenas, {name}' })).body
    const own = templates.find(
      (one: { step: string; language: string }) => one.step === 'thanks' && one.language === 'es',
    )
    expect(own).toMatchObject({
      text: 'Buenas, {name}',
      isUsual: false,
      versions: [{ text: 'Hola {name}' }, { text: 'Buenas, {name}' }],
    })
  })

  it('who has no mail address is not written to, and the line says what to do', async () => {
    const { id } = (await post('/api/offers', { offer: { ...words, mail: null } })).body
    const letter = { about: `candidate ${id}`, step: 'questions', id: 'l1', subject: 'S', text: 'T' }
    expect((await post('/api/letters/send', letter)).body).toMatchObject({
      code: 'MAIL_ADDRESS_MISSING',
      advice: expect.stringContaining('Print'),
    })
  })
})
