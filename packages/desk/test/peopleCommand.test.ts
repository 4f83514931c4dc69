/** People, passwords and the trail from the command line, and a desk that is opened to others. */
import { request } from 'node:http'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openSqlitePorts } from '../src/store/sqlite/openSqlitePorts.ts'
import { fillLedger } from './support/openDesk.ts'
import { smallNetwork } from './support/smallNetwork.ts'
import { type TestWorld, testWorld } from './support/testWorld.ts'

const PASSWORD = 'tin roof and slow rain'

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

const gaugewright = (...words: string[]) => world.gaugewright(...words, '--db', db)
const json = async (...words: string[]) => JSON.parse((await gaugewright(...words, '--json')).out)
const addOwner = () =>
  gaugewright('people', 'add', 'Marlow Finch', '--role', 'coordinator', '--mail', 'Marlow@Desk.example')

describe('gaugewright people', () => {
  it('adds, lists and changes people, named by name or address', async () => {
    const code = small.gauges[0]?.code ?? ''
    await addOwner()
    const added = await gaugewright('people', 'add', 'Ona Reed', '--role', 'observer', '--gauges', code)
    expect([added.code, added.out]).toEqual([0, expect.stringContaining(code)])
    const changed = await json('people', 'role', 'ona reed', 'viewer')
    expect(changed.people).toMatchObject([
      { name: 'Marlow Finch', role: 'coordinator', mail: 'marlow@desk.example', hasPassword: false },
      { name: 'Ona Reed', role: 'viewer', gauges: [small.gauges[0]?.id] },
    ])
    expect((await gaugewright('people', 'role', 'Nobody', 'viewer')).err).toMatch(/^PERSON_UNKNOWN {2}/)
    expect((await gaugewright('people', 'add', 'X', '--role', 'observer', '--gauges', 'ZZZ')).err).toMatch(
      /^GAUGE_NOT_IN_NETWORK {2}/,
    )
    expect((await addOwner()).err).toMatch(/^MAIL_TAKEN {2}/)
    expect((await gaugewright('people', 'add', 'X', '--role', 'king')).code).toBe(2)
  })

  it('changes name, address, language and number; the gauge names the new name, the trail only what was changed', async () => {
    const gauge = small.gauges[0]
    const ona = ['people', 'add', 'Ona Reed', '--role', 'observer', '--mail', 'ona@people.example']
    await gaugewright(...ona, '--gauges', gauge?.code ?? '')
    await addOwner()
    const ports = await openSqlitePorts(db)
    const [kept] = await ports.ledger.gauges(small.network.id)
    if (kept === undefined) throw new Error('no gauge')
    await ports.ledger.saveGauges([{ ...kept, observerName: 'Ona Reed' }])
    const { id } = (await ports.access.personByMail('ona@people.example')) ?? { id: '' }
    const link = { askedAtUtc: '2031-01-01T00:00:00Z', endsAtUtc: '2031-01-01T00:15:00Z', personId: id }
    await ports.access.saveLink({ ...link, tokenHash: 't', browserHash: 'b' })
    await ports.ledger.close()

    const change = (...words: string[]) => gaugewright('people', 'change', ...words)
    const all = ['--name', 'Ona Vale', '--mail', 'Vale@people.example', '--language', 'es', '--phone', '+15550100123']
    expect((await change('Ona Reed', ...all)).out).toMatch(/Ona Vale.*vale@people\.example.*\+15550100123/)
    expect((await change('Ona Vale', '--mail', 'marlow@desk.example')).err).toMatch(/^MAIL_TAKEN {2}/)
    expect((await change('Ona Vale', '--phone', '5550100')).code).toBe(2)
    expect((await change('Ona Vale')).code).toBe(2)
    await gaugewright('remind', 'choose', 'Ona Vale', 'mail')
    expect((await change('Ona Vale', '--language', 'es')).code).toBe(0)

    const after = await openSqlitePorts(db)
    const renamed = (await after.ledger.gauges(small.network.id)).find((one) => one.id === kept.id)
    expect(renamed?.observerName).toBe('Ona Vale')
    // The link lies in the old mailbox.
    expect(await after.access.linksOf(id)).toEqual([])
    await after.ledger.close()
    const { people } = await json('people', 'list')
    expect(people.at(-1)).toMatchObject({ name: 'Ona Vale', language: 'es', phone: '+15550100123' })
    const { entries } = await json('audit', '--person', id)
    const acts = entries.map(({ act }: { act: string }) => act)
    expect(acts).toEqual(['changePhone', 'changeLanguage', 'changeMail', 'changeName', 'addPerson'])
  })

  it('takes a password that is long and not guessable, a coordinator’s first', async () => {
    await addOwner()
    await gaugewright('people', 'add', 'Vera Lake', '--role', 'viewer', '--mail', 'vera@desk.example')
    const tries = async (person: string, password: string) => {
      world.typed.push(password)
      const { code, err } = await gaugewright('people', 'password', person)
      return [code, err.split(' ')[0]]
    }
    expect(await tries('Vera Lake', PASSWORD)).toEqual([1, 'COORDINATOR_FIRST'])
    expect(await tries('Marlow Finch', 'short')).toEqual([2, 'ASK_NOT_VALID'])
    expect(await tries('Marlow Finch', 'marlowfinch12')).toEqual([1, 'PASSWORD_GUESSABLE'])
    expect(await tries('marlow@desk.example', PASSWORD)).toEqual([0, ''])
    expect(await tries('Vera Lake', PASSWORD)).toEqual([0, ''])
    const last = await gaugewright('people', 'role', 'Marlow Finch', 'viewer')
    expect(last.err).toMatch(/^LAST_COORDINATOR {2}/)
    expect((await gaugewright('people', 'forget', 'Marlow Finch', '--yes')).err).toMatch(/^LAST_COORDINATOR {2}/)
  })

  it('forgets a person and keeps what they read; the trail says so without a name', async () => {
    const gauge = small.gauges[0]
    await gaugewright(
      'people',
      'add',
      'Ona Reed',
      '--role',
      'observer',
      '--mail',
      'ona@people.example',
      '--gauges',
      gauge?.code ?? '',
    )
    const held = JSON.parse((await gaugewright('export-person', 'Ona Reed')).out)
    expect(held.person).toMatchObject({ name: 'Ona Reed', mail: 'ona@people.example' })
    expect(held.sections.readings).toHaveLength(small.readings.filter(({ gaugeId }) => gaugeId === gauge?.id).length)
    expect(held.sections.gauges).toMatchObject([{ id: gauge?.id }])
    expect((await gaugewright('people', 'forget', 'Ona Reed')).code).toBe(2)
    expect((await json('people', 'forget', 'Ona Reed', '--yes')).people).toEqual([])
    const ports = await openSqlitePorts(db)
    const range = await ports.ledger.dayRange(small.network.id)
    const kept = (await ports.ledger.gauges(small.network.id)).find(({ id }) => id === gauge?.id)
    await ports.ledger.close()
    expect([range?.readings, kept?.observerName]).toEqual([small.readings.length, null])
    const { entries } = await json('audit')
    expect(entries.map(({ act, name, door }: Record<string, unknown>) => [act, name, door])).toEqual([
      ['forgetPerson', null, 'command line'],
      ['exportPerson', null, 'command line'],
      ['addPerson', null, 'command line'],
    ])
    expect((await gaugewright('audit', '--limit', '1')).out).toMatch(/forgetPerson[\s\S]*Older ones: --before /)
  })
})

describe('gaugewright audit', () => {
  it('names what was decided, taken back and set at the command line', async () => {
    const code = small.gauges[0]?.code ?? ''
    const day = small.readings.at(-1)?.lastDay ?? ''
    const decided = await json('decide', day, code, 'stands')
    const row = decided.roll.find((entry: { code: string }) => entry.code === code)
    await gaugewright('undo', row.decision.id)
    await gaugewright('rule', 'set', '0.98', '--why', 'a test')
    const { entries } = await json('audit')
    expect(entries.map(({ act, subject }: Record<string, unknown>) => [act, subject])).toEqual([
      ['setRule', null],
      ['undo', row.decision.id],
      ['decide', row.readingId],
    ])
  })
})

describe('gaugewright serve --host', () => {
  const serve = () => world.start('serve', '--db', db, '--host', '0.0.0.0', '--port', '0', '--no-open')

  it('refuses to listen where other computers reach it, while nobody has a password', async () => {
    const refused = await gaugewright('serve', '--host', '0.0.0.0', '--port', '0', '--no-open')
    expect([refused.code, refused.err]).toEqual([1, expect.stringMatching(/^HOST_NEEDS_PASSWORD {2}0\.0\.0\.0/)])
    const proxied = await gaugewright('serve', '--public-url', 'https://desk.example', '--port', '0', '--no-open')
    expect(proxied.err).toMatch(/^HOST_NEEDS_PASSWORD {2}https:\/\/desk\.example/)
  })

  it('asks everybody to sign in once it listens, on this computer too', async () => {
    await addOwner()
    world.typed.push(PASSWORD)
    await gaugewright('people', 'password', 'Marlow Finch')
    const { line, stop } = await serve()
    const port = /:(\d+) /.exec(line)?.[1] ?? ''
    const map = await ask(port, '/api/map')
    expect([map.status, JSON.parse(map.body).code]).toEqual([401, 'SIGN_IN_NEEDED'])
    const signedIn = await ask(port, '/api/sign-in', { mail: 'marlow@desk.example', password: PASSWORD })
    expect(JSON.parse(signedIn.body)).toMatchObject({ actor: { name: 'Marlow Finch' }, isOpen: false })
    expect((await ask(port, '/api/map', undefined, signedIn.cookie)).status).toBe(200)
    expect((await stop()).err).toMatch(/^Passwords travel unencrypted/)
  })
})

function ask(
  port: string,
  path: string,
  body?: object,
  cookie = '',
): Promise<{ status: number; body: string; cookie: string }> {
  return new Promise((done, failed) => {
    const headers = { host: `127.0.0.1:${port}`, 'content-type': 'application/json', cookie }
    const call = request({ port, path, method: body ? 'POST' : 'GET', headers }, (response) => {
      let text = ''
      response.setEncoding('utf8').on('data', (part) => {
        text += part
      })
      const set = (response.headers['set-cookie'] ?? []).map((line) => line.split(';')[0]).join('; ')
      response.on('end', () => done({ status: response.statusCode ?? 0, body: text, cookie: set }))
    })
    call.on('error', failed).end(body && JSON.stringify(body))
  })
}
