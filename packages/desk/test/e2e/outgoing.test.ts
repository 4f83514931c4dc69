/** Mail and reminders on the Settings screen of a desk that runs, with a real mail server, in a real browser. */
import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { AxeBuilder } from '@axe-core/playwright'
import { type Browser, chromium, type Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openSqlitePorts } from '../../src/store/sqlite/openSqlitePorts.ts'
import { type MailServer, openMailServer } from '../support/mailServer.ts'
import { fillLedger } from '../support/openDesk.ts'
import { smallNetwork } from '../support/smallNetwork.ts'

const main = fileURLToPath(new URL('../../src/main.ts', import.meta.url))
let folder: string
let desk: ChildProcess
let url: string
let server: MailServer
let browser: Browser
let page: Page
const troubles: string[] = []

beforeAll(async () => {
  server = await openMailServer()
  folder = await mkdtemp(join(tmpdir(), 'gaugewright-outgoing-'))
  const db = join(folder, 'ledger.db')
  const { ledger, outbox } = await openSqlitePorts(db)
  await fillLedger(ledger, smallNetwork(20))
  const content = { kind: 'mail', to: 'ada@example.org', subject: 'Hello', text: 'T\n', headers: {} } as const
  const rest = { purpose: 'question', repeatable: false, isSecret: false, by: 'P', notAfterUtc: null } as const
  const queuedAtUtc = new Date().toISOString()
  await outbox.queue([{ id: 'q1', networkId: 'small', key: 'q1', content, queuedAtUtc, ...rest }])
  await ledger.close()
  const words = ['--conditions=source', '--import', 'tsx', main, 'serve', '--db', db, '--port', '0', '--no-open']
  desk = spawn(process.execPath, words, { stdio: ['ignore', 'pipe', 'inherit'] })
  url = await new Promise((found) => {
    let said = ''
    desk.stdout?.on('data', (part) => {
      said += String(part)
      const address = /open at (http:\S+)/.exec(said)?.[1]
      if (address !== undefined) found(address)
    })
  })
  browser = await chromium.launch({
    executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu'],
  })
  page = await browser.newPage({ viewport: { width: 1440, height: 900 }, locale: 'en-US' })
  page.on('console', (message) => void (message.type() === 'error' && troubles.push(message.text())))
  page.on('pageerror', (error) => troubles.push(error.message))
})
afterAll(async () => {
  await browser?.close()
  desk?.kill('SIGTERM')
  await server?.close()
  await rm(folder, { recursive: true, force: true })
})

const outgoing = () => page.getByTestId('outgoing')
const outbox = () => page.getByTestId('outbox')

describe('mail and reminders on Settings', () => {
  it('what waits is shown with the reason, discarded, and taken back', async () => {
    await page.goto(`${url}/settings`)
    await outgoing().getByText('Mail is not set up: mail waits.').waitFor()
    await outbox().getByText('ada@example.org').waitFor()
    await outbox().getByRole('button', { name: 'Discard: Question to ada@example.org' }).click()
    await outbox().getByText('Discarded: Question to ada@example.org.').waitFor()
    await outbox().getByText('Nothing waits').waitFor()
    expect(server.connections, 'nothing goes out before mail is set').toBe(0)
    await outbox().getByRole('button', { name: 'Take back' }).click()
    await outbox().getByRole('button', { name: 'Discard: Question to ada@example.org' }).waitFor()
  })

  it('is set by keyboard; then what waited goes out, and a test arrives', async () => {
    await outgoing().getByLabel('Mail server').fill('127.0.0.1')
    await outgoing().getByLabel('Port').fill(String(server.port))
    await outgoing().getByLabel('Mail comes from (address)').fill('desk@example.org')
    await outgoing().getByRole('radio', { name: 'None, on this computer' }).check({ force: true })
    await outgoing().getByRole('button', { name: 'Set mail' }).focus()
    await page.keyboard.press('Enter')
    await outgoing().getByText('Set. Mail that waited goes out now.').waitFor()
    await expect.poll(() => server.received.map(({ mail }) => mail.subject), { timeout: 10_000 }).toEqual(['Hello'])
    await outgoing().getByLabel('Send a test to').fill('blas@example.org')
    await page.keyboard.press('Enter')
    await expect.poll(() => server.received.length, { timeout: 10_000 }).toBe(2)
    expect(server.received[1]?.to).toEqual(['blas@example.org'])
    await outbox().getByText('2 sent, 0 discarded').waitFor({ timeout: 15_000 })
  })

  it('a message in doubt says what that means, and waits for a person', async () => {
    server.trouble = 'drop after data'
    await outgoing().getByRole('button', { name: 'Send a test' }).click()
    await outbox().getByText('in doubt', { exact: true }).waitFor({ timeout: 15_000 })
    await outbox().getByText('Sent again, it may arrive twice').waitFor()
    server.trouble = 'none'
    await outbox().getByRole('button', { name: 'Send again: Test to blas@example.org' }).click()
    await expect.poll(() => server.received.length, { timeout: 10_000 }).toBe(4)
  })

  it('reminders want an hour after the readings and an address for their links, and tell whom it would be', async () => {
    await outgoing().getByRole('radio', { name: 'On', exact: true }).check({ force: true })
    await outgoing().getByRole('button', { name: 'Set reminders' }).click()
    await outgoing().getByText('REMINDERS_NEED_ADDRESS').waitFor()
    await outgoing().getByLabel('Where people reach this desk').fill('https://desk.example.org')
    await outgoing().getByRole('button', { name: 'Set reminders' }).click()
    await outgoing().getByText('Set. If today’s hour is past, they begin tomorrow.').waitFor()
    // The refusal above is an answer of the desk, which the browser's console tells of.
    expect(troubles.filter((text) => !text.includes('400'))).toEqual([])
  })

  it.each(['light', 'dark'] as const)(
    'has no serious finding of axe and no sideways scrolling at 360 px, %s',
    async (colorScheme) => {
      const context = await browser.newContext({ viewport: { width: 360, height: 740 }, colorScheme, locale: 'es-ES' })
      const small = await context.newPage()
      await small.goto(`${url}/settings`)
      await small.getByTestId('outbox').waitFor()
      const wide = await small.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
      expect(wide).toBeLessThanOrEqual(0)
      const { violations } = await new AxeBuilder({ page: small }).include('[data-testid=outgoing]').analyze()
      const bad = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical')
      expect(bad.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`)).toEqual(
        [],
      )
      await context.close()
    },
  )
})
