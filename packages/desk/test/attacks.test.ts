/** The attacks that docs/threat-model.md names, tried on a desk that asks for a sign-in. */
import { routes } from '@gaugewright/contract'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { hashPassword } from '../src/app/access/passwords.ts'
import { digestOf } from '../src/app/access/secrets.ts'
import { buildServer } from '../src/server/buildServer.ts'
import { openTestDesk } from './support/openDesk.ts'
import { lockDesk, type SignedIn, signedIn } from './support/signedIn.ts'

type Desk = Awaited<ReturnType<typeof openTestDesk>>

let desk: Desk
let owner: SignedIn
let observer: SignedIn
beforeEach(async () => {
  desk = await openTestDesk({}, 5)
  owner = await lockDesk(desk)
  observer = await signedIn(desk, { role: 'observer', mail: 'obs@people.example', name: 'O. Observer' })
})
afterEach(() => desk.app.close())

const json = { 'content-type': 'application/json' }
const post = (url: string, payload: object, headers: Record<string, string> = {}, remoteAddress = '127.0.0.1') =>
  desk.app.inject({ method: 'POST', url, payload, headers: { ...json, ...headers }, remoteAddress })
const cookiesOf = (response: { cookies: { name: string; value: string }[] }): string =>
  response.cookies.map(({ name, value }) => `${name}=${value}`).join('; ')
const codeOf = (response: { statusCode: number; json: () => { code?: string } }) => [
  response.statusCode,
  response.json().code,
]

/** Asks for a link, and opens the mail. */
async function mailedLink(mail = 'obs@people.example'): Promise<{ link: string; browser: string; text: string }> {
  const before = (await desk.ports.outbox.list(desk.small.network.id, { limit: 100 })).length
  const asked = await post('/api/sign-in/link', { mail })
  expect([asked.statusCode, asked.json()]).toEqual([200, { minutes: 15 }])
  const mails = await desk.ports.outbox.list(desk.small.network.id, { limit: 100 })
  const content = mails.length > before ? mails[0]?.content : undefined
  const text = content?.kind === 'mail' ? content.text : ''
  return { link: /#link=([\w-]+)/.exec(text)?.[1] ?? '', browser: cookiesOf(asked), text }
}

describe('a sign-in link', () => {
  it('signs its observer in, in the browser that asked', async () => {
    const { link, browser, text } = await mailedLink()
    expect(text).toContain('http://localhost:80/sign-in#link=')
    const used = await post('/api/sign-in/link/use', { link }, { cookie: browser })
    expect(used.json()).toMatchObject({ actor: { name: 'O. Observer', role: 'observer' }, isOpen: false })
    const who = await desk.app.inject({ method: 'GET', url: '/api/who', headers: { cookie: cookiesOf(used) } })
    expect(who.json().actor.personId).toBe(observer.person.id)
  })

  it('that was used works no second time, even for the right browser (replay)', async () => {
    const { link, browser } = await mailedLink()
    await post('/api/sign-in/link/use', { link }, { cookie: browser })
    expect(codeOf(await post('/api/sign-in/link/use', { link }, { cookie: browser }))).toEqual([401, 'LINK_NOT_VALID'])
  })

  it('opens nothing in another browser: one that never asked, and one that asked for itself', async () => {
    const { link, browser } = await mailedLink()
    const other = await mailedLink()
    expect(codeOf(await post('/api/sign-in/link/use', { link }))).toEqual([401, 'LINK_NOT_VALID'])
    const inOther = await post('/api/sign-in/link/use', { link }, { cookie: other.browser })
    expect(codeOf(inOther)).toEqual([401, 'LINK_NOT_VALID'])
    expect((await post('/api/sign-in/link/use', { link }, { cookie: browser })).statusCode).toBe(200)
  })

  it('works for fifteen minutes and not a second longer', async () => {
    const { link, browser } = await mailedLink()
    desk.ports.clock.nowUtc = () => '2026-05-31T08:45:00Z'
    expect(codeOf(await post('/api/sign-in/link/use', { link }, { cookie: browser }))).toEqual([401, 'LINK_NOT_VALID'])
    desk.ports.clock.nowUtc = () => '2026-05-31T08:44:59Z'
    expect((await post('/api/sign-in/link/use', { link }, { cookie: browser })).statusCode).toBe(200)
  })

  it('is told alike for an address that is unknown, or of one who has a password, and no mail is written', async () => {
    for (const mail of ['nobody@people.example', owner.person.mail ?? '']) {
      expect((await mailedLink(mail)).link).toBe('')
    }
  })

  it('is kept nowhere but in the mail, and the mail may not outlive it', async () => {
    const { link } = await mailedLink()
    const [kept] = await desk.ports.access.linksOf(observer.person.id)
    expect(kept?.tokenHash).toBe(digestOf(link))
    const [mail] = await desk.ports.outbox.list(desk.small.network.id, { limit: 1 })
    expect(mail).toMatchObject({ isSecret: true, purpose: 'sign-in', notAfterUtc: '2026-05-31T08:45:00.000Z' })
  })
})

describe('a session', () => {
  it('is in a cookie that no script reads and no other site sends', async () => {
    const { link, browser } = await mailedLink()
    const used = await post('/api/sign-in/link/use', { link }, { cookie: browser })
    const session = used.cookies.find(({ name }) => name === 'gaugewright-session')
    expect(session).toMatchObject({ httpOnly: true, sameSite: 'Strict', path: '/' })
    expect(await desk.ports.access.session(digestOf(session?.value ?? ''), desk.ports.clock.nowUtc())).not.toBeNull()
  })

  it('begins under a secret of its own, whatever the browser brought (session fixation)', async () => {
    const { link, browser } = await mailedLink()
    const planted = await signedIn(desk, { role: 'viewer' })
    const used = await post('/api/sign-in/link/use', { link }, { cookie: `${browser}; ${planted.cookie}` })
    const value = used.cookies.find(({ name }) => name === 'gaugewright-session')?.value
    expect(`gaugewright-session=${value}`).not.toBe(planted.cookie)
    // What was planted is worth nothing to whoever planted it.
    expect(codeOf(await desk.app.inject({ url: '/api/map', ...planted.request }))).toEqual([401, 'SIGN_IN_NEEDED'])
    const made = await post('/api/sign-in/link/use', { link: 'x' }, { cookie: 'gaugewright-session=chosen' })
    expect(made.cookies).toEqual([])
  })

  it('ends when it is signed out of, and when the password or the role changes', async () => {
    const colleague = await signedIn(desk, { role: 'colleague' })
    await post('/api/sign-out', {}, colleague.request.headers)
    expect(codeOf(await desk.app.inject({ url: '/api/map', ...colleague.request }))).toEqual([401, 'SIGN_IN_NEEDED'])
    const other = await signedIn(desk, { role: 'colleague' })
    await post('/api/people/role', { personId: other.person.id, role: 'viewer' }, owner.request.headers)
    expect(codeOf(await desk.app.inject({ url: '/api/map', ...other.request }))).toEqual([401, 'SIGN_IN_NEEDED'])
  })

  it('lasts twelve hours at the desk, and ninety days on an observer’s phone', async () => {
    const atAfter = async (hours: number, { request }: SignedIn) => {
      desk.ports.clock.nowUtc = () => new Date(Date.parse('2026-05-31T08:30:00Z') + hours * 3_600_000).toISOString()
      return (await desk.app.inject({ url: '/api/who', ...request })).json().actor?.personId ?? null
    }
    expect([await atAfter(11.9, owner), await atAfter(12, owner)]).toEqual([owner.person.id, null])
    expect([await atAfter(2159, observer), await atAfter(2160, observer)]).toEqual([observer.person.id, null])
  })
})

describe('another site', () => {
  it('can change nothing through a person who is signed in (cross-site request)', async () => {
    const decision = { readingId: 'x', verdict: 'stands', amended: null, reason: '' }
    const foreign: Record<string, string>[] = [
      { origin: 'http://evil.example' },
      { origin: 'null' },
      { 'sec-fetch-site': 'cross-site' },
      { 'sec-fetch-site': 'same-site' },
    ]
    for (const headers of foreign) {
      const response = await post('/api/decisions', decision, { ...owner.request.headers, ...headers })
      expect(codeOf(response)).toEqual([403, 'ORIGIN_REFUSED'])
    }
    const form = { ...owner.request.headers, 'content-type': 'text/plain' }
    expect(codeOf(await post('/api/decisions', decision, form))).toEqual([415, 'BODY_NOT_JSON'])
  })

  it('can sign nobody in as somebody else (login by a foreign page)', async () => {
    const response = await post(
      '/api/sign-in',
      { mail: 'a@b.example', password: 'x' },
      { origin: 'http://evil.example' },
    )
    expect(codeOf(response)).toEqual([403, 'ORIGIN_REFUSED'])
  })
})

describe('a password', () => {
  const PASSWORD = 'tin roof and slow rain'

  it('signs its person in; a wrong one, and an address that is unknown, are told alike', async () => {
    await desk.ports.access.setPasswordHash(owner.person.id, await hashPassword(PASSWORD))
    const mail = owner.person.mail ?? ''
    const right = await post('/api/sign-in', { mail: mail.toUpperCase(), password: PASSWORD })
    expect(right.json()).toMatchObject({ actor: { personId: owner.person.id, role: 'coordinator' } })
    const wrong = await post('/api/sign-in', { mail, password: `${PASSWORD}!` })
    const unknown = await post('/api/sign-in', { mail: 'nobody@people.example', password: PASSWORD })
    expect(codeOf(wrong)).toEqual([401, 'SIGN_IN_FAILED'])
    expect([unknown.statusCode, unknown.json()]).toEqual([wrong.statusCode, wrong.json()])
    expect(unknown.cookies).toEqual([])
  })

  it('that is guessed is refused after twenty tries for one person, from however many computers', async () => {
    const mail = owner.person.mail ?? ''
    const codes: unknown[] = []
    for (let attempt = 0; attempt < 22; attempt++) {
      codes.push((await post('/api/sign-in', { mail, password: 'wrong' }, {}, `192.0.2.${attempt}`)).statusCode)
    }
    expect(codes).toEqual([...Array(20).fill(401), 429, 429])
    const other = await post('/api/sign-in', { mail: 'else@people.example', password: 'x' }, {}, '192.0.2.99')
    expect(other.statusCode).toBe(401)
  })

  it('is tried at most ten times a minute from one computer, whoever is tried', async () => {
    const codes: unknown[] = []
    for (let attempt = 0; attempt < 11; attempt++) {
      codes.push((await post('/api/sign-in', { mail: `p${attempt}@people.example`, password: 'x' })).statusCode)
    }
    expect(codes).toEqual([...Array(10).fill(401), 429])
  })
})

describe('a desk behind a proxy with https', () => {
  const publicUrl = 'https://desk.example'
  const open = () =>
    buildServer(desk.ports, { screens: '/nowhere', publicUrl, allowedHosts: ['desk.example'], limits: { unknown: 2 } })

  it('holds the cookie to its host and to encryption, and tells browsers to stay with it', async () => {
    const app = await open()
    const asked = await app.inject({
      method: 'POST',
      url: '/api/sign-in/link',
      payload: { mail: 'obs@people.example' },
      headers: { ...json, host: 'desk.example', origin: publicUrl, 'x-forwarded-for': '198.51.100.7' },
    })
    expect(asked.cookies).toMatchObject([{ name: '__Host-gaugewright-asked', secure: true, httpOnly: true, path: '/' }])
    expect(asked.headers['strict-transport-security']).toBe('max-age=31536000')
    const [mail] = await desk.ports.outbox.list(desk.small.network.id, { limit: 1 })
    expect(JSON.stringify(mail?.content)).toContain(`${publicUrl}/sign-in#link=`)
    await app.close()
  })

  it('never opens at once, and counts by the address that the proxy on this computer names', async () => {
    const fresh = await openTestDesk({}, 5)
    const app = await buildServer(fresh.ports, { publicUrl, allowedHosts: ['desk.example'], limits: { unknown: 2 } })
    const ask = async (from: string, remoteAddress = '127.0.0.1') =>
      (await app.inject({ url: '/api/map', headers: { host: 'desk.example', 'x-forwarded-for': from }, remoteAddress }))
        .statusCode
    expect([await ask('198.51.100.1'), await ask('198.51.100.1'), await ask('198.51.100.1')]).toEqual([401, 401, 429])
    expect(await ask('198.51.100.2')).toBe(401)
    // Whoever comes past the proxy cannot choose an address to be counted by.
    const past = [await ask('198.51.100.3', '192.0.2.9'), await ask('198.51.100.4', '192.0.2.9')]
    expect([...past, await ask('198.51.100.5', '192.0.2.9')]).toEqual([401, 401, 429])
    await app.close()
    await fresh.app.close()
  })
})

describe('the limits', () => {
  it('hold a computer that asks without an end, with the seconds to wait', async () => {
    const app = await buildServer(desk.ports, { screens: '/nowhere', limits: { unknown: 3, known: 5 } })
    const ask = async (headers: Record<string, string> = {}, url = '/api/map') =>
      (await app.inject({ url, headers, remoteAddress: '192.0.2.1' })).statusCode
    expect([await ask(), await ask(), await ask(), await ask()]).toEqual([401, 401, 401, 429])
    expect([await ask({}, '/api/nothing'), await ask({}, '/')]).toEqual([429, 429])
    const known: number[] = []
    for (let request = 0; request < 6; request++) known.push(await ask(owner.request.headers))
    expect(known).toEqual([200, 200, 200, 200, 200, 429])
    const response = await app.inject({ url: '/api/map', remoteAddress: '192.0.2.1' })
    expect([response.json().code, Number(response.headers['retry-after'])]).toEqual(['TOO_OFTEN', expect.any(Number)])
    await app.close()
  })

  it('count a link three times in fifteen minutes for one address', async () => {
    const codes: unknown[] = []
    for (let attempt = 0; attempt < 4; attempt++) {
      codes.push((await post('/api/sign-in/link', { mail: 'obs@people.example' })).statusCode)
    }
    expect(codes).toEqual([200, 200, 200, 429])
  })
})

describe('a role', () => {
  const decision = { readingId: 'x', verdict: 'stands', amended: null, reason: '', by: 'Somebody Else' }

  it('lets a viewer look and not decide, a colleague decide and not look after people', async () => {
    const viewer = await signedIn(desk, { role: 'viewer' })
    const colleague = await signedIn(desk, { role: 'colleague' })
    expect((await desk.app.inject({ url: '/api/map', ...viewer.request })).statusCode).toBe(200)
    for (const url of ['/api/decisions', '/api/decisions/undo', '/api/rule', '/api/people']) {
      expect(codeOf(await post(url, decision, viewer.request.headers)), url).toEqual([403, 'ROLE_TOO_LOW'])
    }
    expect(codeOf(await post('/api/decisions', decision, colleague.request.headers))).toEqual([404, 'READING_UNKNOWN'])
    for (const url of ['/api/people', '/api/audit', `/api/people/${owner.person.id}/export`]) {
      expect(codeOf(await desk.app.inject({ url, ...colleague.request })), url).toEqual([403, 'ROLE_TOO_LOW'])
    }
  })

  it('keeps an observer from the desk', async () => {
    for (const url of ['/api/days/latest', '/api/map', '/api/accepted.csv', '/api/habits', '/api/people']) {
      expect(codeOf(await desk.app.inject({ url, ...observer.request })), url).toEqual([403, 'ROLE_TOO_LOW'])
    }
  })

  it('or a key is asked for at every path of the interface but those by which people come in and those that describe it', async () => {
    const open: string[] = []
    const paths = routesOf(desk.app.printRoutes({ commonPrefix: false }))
    expect(paths.length).toBeGreaterThan(Object.keys(routes).length / 2)
    for (const { path, methods } of paths) {
      for (const method of methods.filter((name) => name === 'GET' || name === 'POST')) {
        const url = path.replaceAll(/:\w+/g, 'x')
        const response = await desk.app.inject({
          method: method as 'GET' | 'POST',
          url,
          headers: json,
          ...(method === 'POST' && { payload: {} }),
        })
        const isClosed = response.statusCode === 401 && /^\{"code":"(SIGN_IN_NEEDED|KEY_MISSING)"/.test(response.body)
        if (!isClosed) open.push(`${method} ${path}`)
      }
    }
    expect(open.sort()).toEqual([
      'GET /api/offer/page',
      'GET /api/v1',
      'GET /api/v1/openapi.json',
      'GET /api/v1/page.css',
      'GET /api/who',
      // The public page; and the page of an own offer, which looks at the secret of its link.
      'POST /api/offer',
      'POST /api/offer/mine',
      'POST /api/offer/mine/change',
      'POST /api/offer/mine/drills',
      'POST /api/offer/mine/withdraw',
      'POST /api/offer/mine/yard',
      'POST /api/sign-in',
      'POST /api/sign-in/link',
      'POST /api/sign-in/link/use',
      'POST /api/sign-out',
    ])
  })

  it('names who decided, whatever name the request brings', async () => {
    const colleague = await signedIn(desk, { role: 'colleague', name: 'C. Colleague' })
    const readingId = desk.small.readings.at(-1)?.id ?? ''
    const decided = await post('/api/decisions', { ...decision, readingId }, colleague.request.headers)
    expect(decided.statusCode).toBe(200)
    const [made] = await desk.ports.ledger.decisionsBy(colleague.person.id)
    expect(made?.by).toEqual({ kind: 'person', name: 'C. Colleague', personId: colleague.person.id })
    const [entry] = await desk.ports.access.audit({ limit: 1 })
    expect(entry).toMatchObject({ act: 'decide', subject: readingId, personId: colleague.person.id, result: 'done' })
  })
})

/** Paths of the interface from the tree that the server prints of itself. */
function routesOf(tree: string): { path: string; methods: string[] }[] {
  const above: string[] = []
  const found: { path: string; methods: string[] }[] = []
  for (const line of tree.split('\n')) {
    const [, indent = '', part, methods] = /^([│ ]*)[├└]── (\S+)(?: \(([^)]+)\))?/.exec(line) ?? []
    if (part === undefined) continue
    above.length = indent.length / 4
    above.push(part)
    const path = above.join('')
    if (methods !== undefined && path.startsWith('/api/')) found.push({ path, methods: methods.split(', ') })
  }
  return found
}

describe('a desk that opens at once', () => {
  it('does so while nobody has a password, and not for what a proxy passes on or what comes from elsewhere', async () => {
    const fresh = await openTestDesk({}, 5)
    const ask = async (headers: Record<string, string> = {}, remoteAddress = '127.0.0.1') =>
      (await fresh.app.inject({ url: '/api/who', headers, remoteAddress })).json()
    expect(await ask()).toMatchObject({ actor: { role: 'coordinator', personId: 'owner' }, isOpen: true })
    for (const name of ['x-forwarded-for', 'forwarded', 'via', 'x-real-ip']) {
      expect(await ask({ [name]: '192.0.2.7' })).toEqual({ actor: null, isOpen: false })
    }
    expect(await ask({}, '192.0.2.7')).toEqual({ actor: null, isOpen: false })
    await lockDesk(fresh)
    expect(await ask()).toEqual({ actor: null, isOpen: false })
    await fresh.app.close()
  })
})
