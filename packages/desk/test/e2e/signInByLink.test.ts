/** An observer signs in by the link of a mail, in a real browser: asks, opens it, and is brought to their own page. */
import type { AddressInfo } from 'node:net'
import { type Browser, type BrowserContext, chromium } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { buildServer } from '../../src/server/buildServer.ts'
import { builtScreens } from '../../src/server/serveScreens.ts'
import { openTestDesk } from '../support/openDesk.ts'
import { lockDesk, signedIn } from '../support/signedIn.ts'

let desk: Awaited<ReturnType<typeof openTestDesk>>
let app: Awaited<ReturnType<typeof buildServer>>
let browser: Browser
let url: string

beforeAll(async () => {
  desk = await openTestDesk({}, 5)
  desk.ports.clock.nowUtc = () => new Date().toISOString()
  await lockDesk(desk)
  await signedIn(desk, { role: 'observer', mail: 'ona@people.example', name: 'Ona Reed' })
  app = await buildServer(desk.ports, { screens: builtScreens() })
  await app.listen({ host: '127.0.0.1', port: 0 })
  url = `http://127.0.0.1:${(app.server.address() as AddressInfo).port}`
  const executablePath = process.env.CHROMIUM_PATH ?? '/usr/bin/chromium'
  browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] })
})
afterAll(async () => {
  await browser?.close()
  await app?.close()
})

const mailedLink = async (): Promise<string> => {
  const [mail] = await desk.ports.outbox.list(desk.small.network.id, { limit: 1 })
  return mail?.content.kind === 'mail' ? (/http\S+/.exec(mail.content.text)?.[0] ?? '') : ''
}

async function openAt(context: BrowserContext, address: string) {
  const page = await context.newPage()
  const foreign: string[] = []
  page.on('request', (request) => {
    if (new URL(request.url()).origin !== url) foreign.push(request.url())
  })
  await page.goto(address)
  return { page, foreign }
}

it('signs in by link in the browser that asked, and in no other', async () => {
  const own = await browser.newContext({ locale: 'en-US', viewport: { width: 360, height: 740 } })
  const { page, foreign } = await openAt(own, `${url}/settings`)
  await page.getByRole('heading', { name: 'Sign in' }).waitFor()
  expect(new URL(page.url()).searchParams.get('next')).toBe('/settings')
  await page.getByRole('radio', { name: 'With a link by mail' }).check({ force: true })
  await page.getByRole('textbox', { name: 'Mail address' }).fill('Ona@people.example')
  await page.keyboard.press('Enter')
  await page.getByText(/a link is on its way/).waitFor()
  const link = await mailedLink()
  expect(link).toContain(`${url}/sign-in#link=`)

  const other = await openAt(await browser.newContext({ locale: 'en-US' }), link)
  await other.page.getByRole('alert').filter({ hasText: 'LINK_NOT_VALID' }).waitFor()

  await page.goto('about:blank')
  await page.goto(link)
  await page.waitForURL(`${url}/my/**`)
  const { actor } = await page.evaluate(async () => (await fetch('/api/who')).json())
  expect(actor).toMatchObject({ name: 'Ona Reed', role: 'observer' })
  expect(await page.evaluate(() => document.cookie)).toBe('')
  await page.goto(`${url}/settings`)
  await page.waitForURL(`${url}/my/**`)
  expect(foreign).toEqual([])

  await page.goto('about:blank')
  await page.goto(link)
  await page.getByRole('alert').filter({ hasText: 'LINK_NOT_VALID' }).waitFor()
  expect(page.url()).not.toContain('link=')
})
