/** Reminders from the roll to the observer's mail box and back by one tap, on a small network with a clock that is set. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { sendDue } from '../src/app/outgoing/sendDue.ts'
import { remind } from '../src/app/remind.ts'
import { remindWhenDue } from '../src/app/reminders/remindWhenDue.ts'
import type { Ports } from '../src/ports/ports.ts'
import { buildServer } from '../src/server/buildServer.ts'
import { openMemoryLedger } from '../src/store/memory/memoryLedger.ts'
import { type MailServer, openMailServer } from './support/mailServer.ts'
import { fillLedger, portsOver } from './support/openDesk.ts'
import { smallNetwork } from './support/smallNetwork.ts'

/** The small network reads at 07:00 in a zone two hours ahead in summer; F6 is silent on the last day, 2026-05-31. */
const small = smallNetwork(5, { timeZone: 'Europe/Rome' })
const deskUrl = 'https://desk.example.org'
let ports: Ports
let nowUtc: string
let server: MailServer

beforeEach(async () => {
  server = await openMailServer()
  nowUtc = '2026-05-31T08:30:00Z'
  const ledger = openMemoryLedger()
  await fillLedger(ledger, small)
  ports = portsOver(ledger, { clock: { nowUtc: () => nowUtc } })
  const people = [
    { id: 'ada', name: 'Ada', language: 'en', mail: 'ada@example.org', gauges: ['gF6'] },
    { id: 'blas', name: 'Blas', language: 'es', mail: 'blas@example.org', gauges: ['gF6', 'gF5'] },
    { id: 'cleo', name: 'Cleo', language: 'en', mail: 'cleo@example.org', gauges: ['gF5'] },
    { id: 'dan', name: 'Dan', language: 'en', mail: null, gauges: ['gF6'] },
  ] as const
  for (const person of people) {
    await ports.access.savePerson({ ...person, role: 'observer', addedAtUtc: '2026-01-01T00:00:00Z' })
  }
  const settings = {
    host: '127.0.0.1',
    port: server.port,
    security: 'none',
    user: null,
    from: 'desk@small.example',
    fromName: 'Small Hills',
  } as const
  await ports.outgoingSettings.setMail('small', { settings, by: 'P', setAtUtc: '2026-05-01T08:00:00Z' })
  await setReminders('2026-05-01T08:00:00Z')
})
afterEach(() => server.close())

async function setReminders(setAtUtc: string, change: { isOn?: boolean; textUrl?: string } = {}): Promise<void> {
  const settings = { isOn: true, atTime: '10:00', deskUrl, textUrl: null, ...change }
  await ports.outgoingSettings.setReminders('small', { settings, by: 'P', setAtUtc })
}
const names = async (): Promise<string[]> => ((await remindWhenDue(ports))?.remind ?? []).map(({ name }) => name)
const look = async () => {
  const answer = await remind(ports, { isLook: true, by: 'P' })
  if (!answer.ok) throw new Error(answer.problem.code)
  return answer.value
}

describe('at the hour that is set', () => {
  it('reminds those who have not read, once, and tells who was left out and why', async () => {
    const { remind: whom, leftOut, day } = await look()
    expect(day).toBe('2026-05-31')
    expect(whom.map(({ name, gauges }) => [name, gauges])).toEqual([
      ['Ada', ['F6']],
      ['Blas', ['F6']],
    ])
    expect(leftOut.map(({ name, why }) => [name, why])).toEqual([
      ['Cleo', 'read'],
      ['Dan', 'no address'],
    ])
    expect(await names()).toEqual(['Ada', 'Blas'])
    nowUtc = '2026-05-31T15:00:00Z'
    expect(await names()).toEqual([])
    expect(await sendDue(ports)).toBe(2)
  })

  it('not a minute before 10:00 local time, and from then on', async () => {
    nowUtc = '2026-05-31T07:59:59Z'
    expect(await names()).toEqual([])
    nowUtc = '2026-05-31T08:00:00Z'
    expect(await names()).toEqual(['Ada', 'Blas'])
  })

  it('after a stop of the desk: today is made up for until midnight, yesterday is not', async () => {
    nowUtc = '2026-05-31T21:59:00Z'
    expect(await names()).toEqual(['Ada', 'Blas'])
    const { rows } = { rows: await ports.outbox.list('small', { limit: 9 }) }
    expect(rows.map(({ notAfterUtc }) => notAfterUtc)).toEqual(['2026-05-31T22:00:00.000Z', '2026-05-31T22:00:00.000Z'])
    // The mail server was not reached on that day: a note of yesterday is of no use.
    nowUtc = '2026-05-31T22:00:01Z'
    expect(await sendDue(ports)).toBe(0)
    expect(await ports.outbox.counts('small')).toMatchObject({ discarded: 2, waiting: 0 })
    expect(await names(), 'the new date has its own hour').toEqual([])
    nowUtc = '2026-06-01T07:59:00Z'
    expect(await names()).toEqual([])
  })

  it('not where it was switched on after today’s hour, nor where it is off', async () => {
    await setReminders('2026-05-31T08:10:00Z')
    expect(await names()).toEqual([])
    await setReminders('2026-05-01T08:00:00Z', { isOn: false })
    expect(await names()).toEqual([])
  })

  it('leaves in peace who is away, and afterwards waits for one total', async () => {
    const absence = { networkId: 'small', gaugeId: 'gF6', announcedBy: 'Ada', announcedAtUtc: nowUtc }
    await ports.absences.announce({ ...absence, id: 'a1', firstDay: '2026-05-30', lastDay: '2026-05-31' })
    expect((await look()).leftOut.map(({ why }) => why)).toEqual(['away', 'away', 'read', 'away'])
    expect(await names()).toEqual([])
    await ports.absences.withdraw('small', 'a1', 'Ada', nowUtc)
    await ports.absences.announce({ ...absence, id: 'a2', firstDay: '2026-05-30', lastDay: '2026-05-30' })
    const readings = await ports.ledger.readingsOfGauge('small', 'gF6', '2026-05-31', '2026-05-31')
    expect(readings, 'no total has come').toEqual([])
    expect((await look()).leftOut.find(({ name }) => name === 'Ada')?.why).toBe('total open')
  })

  it('a reading that came in between is not asked for', async () => {
    const [reading] = await ports.ledger.readingsOfGauge('small', 'gF5', '2026-05-31', '2026-05-31')
    await ports.ledger.appendReadings('small', [{ ...reading!, id: 'late', gaugeId: 'gF6' }])
    expect(await names()).toEqual([])
  })
})

describe('the note', () => {
  it('is kind, in the language of its reader, and can be stopped with one click by RFC 8058', async () => {
    await remindWhenDue(ports)
    await sendDue(ports)
    const [ada, blas] = server.received
      .map(({ mail, raw }) => ({ mail, raw }))
      .sort((one, other) => (one.mail.subject! < other.mail.subject! ? 1 : -1))
    expect(ada?.mail.subject).toBe('Your reading for 31 May: Small Hills')
    expect(blas?.mail.subject).toBe('Su lectura del 31 de mayo: Small Hills')
    expect(ada?.mail.text).toContain('a zero is a reading too')
    expect(blas?.mail.text).toContain('un cero también es una lectura')
    expect(ada?.mail.text).toContain(`${deskUrl}/my`)
    const list = ada?.mail.headers.get('list') as { unsubscribe: { url: string }; 'unsubscribe-post': { name: string } }
    expect(list.unsubscribe.url).toMatch(/^https:\/\/desk\.example\.org\/reminders\/stop\/\S+$/)
    expect(ada?.raw).toMatch(/^List-Unsubscribe-Post: List-Unsubscribe=One-Click\r?$/m)
    expect(ada?.mail.text, 'the same link stands in the text').toContain(list.unsubscribe.url)
    // No neighbour's amount before their own is in.
    expect(`${ada?.mail.text}${blas?.mail.text}`).not.toMatch(/\d\s?(mm|in)\b/)
  })

  it('goes as a text message to the service that is set, for those who chose that', async () => {
    await setReminders('2026-05-01T08:00:00Z', { textUrl: 'https://text.example.org/send' })
    const chosen = { wants: true, way: 'text', phone: '+34600000000', by: 'P', chosenAtUtc: nowUtc } as const
    await ports.outgoingSettings.choose('small', { personId: 'blas', ...chosen })
    await remindWhenDue(ports)
    const text = (await ports.outbox.list('small', { limit: 9 })).find(({ content }) => content.kind === 'webhook')
    expect(text).toMatchObject({ isSecret: true, repeatable: false, content: { url: 'https://text.example.org/send' } })
    const body = JSON.parse(text?.content.kind === 'webhook' ? text.content.body : '{}')
    expect(body).toMatchObject({ type: 'reminder', to: '+34600000000', language: 'es' })
    expect(body.text).toContain('/reminders/stop/')
  })
})

describe('the link that stops notes', () => {
  const stopPath = async (): Promise<string> => {
    await remindWhenDue(ports)
    const sent = (await ports.outbox.list('small', { limit: 9 })).find(({ key }) => key.endsWith('blas'))
    const headers = sent?.content.kind === 'mail' ? sent.content.headers : {}
    return new URL(String(headers['List-Unsubscribe']).slice(1, -1)).pathname
  }
  const form = { 'content-type': 'application/x-www-form-urlencoded' }

  it('one click of a mail program stops them, without sign-in or cookie, from any page', async () => {
    const app = await buildServer(ports, { screens: '/nowhere' })
    const url = await stopPath()
    const posted = await app.inject({
      method: 'POST',
      url,
      headers: { ...form, origin: 'https://mail.example.net', 'sec-fetch-site': 'cross-site' },
      payload: 'List-Unsubscribe=One-Click',
    })
    expect(posted.statusCode).toBe(200)
    expect(posted.headers['set-cookie']).toBeUndefined()
    nowUtc = '2026-06-01T08:30:00Z'
    expect(await names()).toEqual(['Ada', 'Cleo'])
    await app.close()
  })

  it('opening it changes nothing, shows one button in the reader’s language, and the button can be taken back', async () => {
    const app = await buildServer(ports, { screens: '/nowhere' })
    const url = await stopPath()
    const opened = await app.inject({ method: 'GET', url })
    expect(opened.headers['content-type']).toBe('text/html; charset=utf-8')
    expect(opened.body).toContain('<html lang="es">')
    expect(opened.body).toContain('No más avisos</button>')
    expect(opened.body).not.toContain('<script')
    expect((await ports.outgoingSettings.choices('small')).get('blas')).toBeUndefined()
    const stopped = await app.inject({ method: 'POST', url, headers: form, payload: '' })
    expect(stopped.body).toContain('Ya no recibirá avisos de Small Hills')
    expect((await ports.outgoingSettings.choices('small')).get('blas')).toMatchObject({
      wants: false,
      by: 'link in a note',
    })
    await app.inject({ method: 'POST', url: url.replace('/stop/', '/start/'), headers: form, payload: '' })
    expect((await ports.outgoingSettings.choices('small')).get('blas')?.wants).toBe(true)
    await app.close()
  })

  it('a link that was changed, or was made for another network, opens nothing', async () => {
    const app = await buildServer(ports, { screens: '/nowhere' })
    const url = await stopPath()
    const [path, token = ''] = [url.slice(0, url.lastIndexOf('/') + 1), url.slice(url.lastIndexOf('/') + 1)]
    const [, signature = ''] = token.split('.')
    const other = Buffer.from('ada').toString('base64url')
    for (const changed of [`${other}.${signature}`, `${token}x`, token.slice(0, -2), 'x', `${token}.${signature}`]) {
      const answer = await app.inject({ method: 'POST', url: `${path}${changed}`, headers: form, payload: '' })
      expect([answer.statusCode, changed]).toEqual([404, changed])
    }
    expect((await ports.outgoingSettings.choices('small')).size).toBe(0)
    await app.close()
  })
})
