/**
 * The way of an observer on a desk that asks for sign-in, from being added to a reading in the ledger: the link comes by a
 * mail over SMTP and opens My gauge in the browser that asked. What waited for it is sent; what is not theirs is told.
 */
import type { AuditTrail, DayReview, MyGauge, People } from '@gaugewright/contract'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Mailbox, openMailbox } from './mailbox.ts'
import { desktop, openBrowser, phone, type Watched, watch } from './openBrowser.ts'
import { demoDay, silentGauges } from './openMy.ts'
import { runGaugewright } from './runGaugewright.ts'
import { type RunningDesk, startDesk } from './startDesk.ts'

const PASSWORD = 'tin roof and slow rain'
const NAME = 'Ona Reed'
let desk: RunningDesk
let browser: Browser
let mailbox: Mailbox
let url: string
let day: string
let codes: string[]
/** One phone through the whole file. */
let watched: Watched
let page: Page

const gaugewright = (...words: string[]) => runGaugewright([...words, '--db', desk.ledger])
const peopleNow = async () => JSON.parse(await gaugewright('people', 'list', '--json')) as People
const answerOf = async (code: string) => {
  const review = JSON.parse(await gaugewright('day', day, '--json')) as DayReview
  const row = review.roll.find((one) => one.code === code)
  return [row?.answer, row?.awayUntil]
}
const givesGauges = (...gauges: string[]) =>
  gaugewright('people', 'role', NAME, 'observer', '--gauges', gauges.join(','))

beforeAll(async () => {
  ;[desk, browser, mailbox] = await Promise.all([
    startDesk(['--years', '1', '--gauges', '60']),
    openBrowser(),
    openMailbox(),
  ])
  url = desk.url
  day = await demoDay(url)
  codes = await silentGauges(url)
  const from = ['--from', 'desk@desk.example', '--security', 'none', '--port', String(mailbox.port)]
  await gaugewright('mail', 'set', '127.0.0.1', ...from)
  await gaugewright('people', 'add', 'Marlow Finch', '--role', 'coordinator', '--mail', 'marlow@desk.example')
  await runGaugewright(['people', 'password', 'Marlow Finch', '--db', desk.ledger], `${PASSWORD}\n`)
  await gaugewright('people', 'add', NAME, '--role', 'observer', '--mail', 'ona@people.example', '--gauges', codes[0]!)
  watched = await watch(browser, url, phone)
  page = watched.page
})
afterAll(async () => {
  await watched?.close()
  await browser?.close()
  await mailbox?.close()
  await desk?.stop()
})

async function askForLink(on: Page, address: string): Promise<string> {
  const card = on.getByTestId('sign-in')
  await card.getByLabel('Your mail address').fill(address)
  await card.getByRole('button', { name: 'Mail me a link' }).click()
  await card.getByText('a link is on its way').waitFor()
  return await mailbox.nextLink(address)
}

async function openIn(context: BrowserContext, link: string): Promise<Page> {
  const opened = await context.newPage()
  await opened.goto(link)
  return opened
}

const lookAgain = (on: Page) => on.evaluate(() => document.dispatchEvent(new Event('visibilitychange')))

/** Report nothing, and say so again where the page asks back. */
async function reportNothing(on: Page, state: string): Promise<void> {
  await on.getByRole('radio', { name: /Nothing/ }).check()
  await on.getByTestId('send').click()
  const back = on.getByTestId('ask-back').getByRole('button', { name: /It is/ })
  const seen = on.locator(`[data-state=${state}]`)
  await Promise.race([back.waitFor(), seen.waitFor()])
  if (await back.isVisible()) await back.first().click()
  await seen.waitFor()
}

const refusedIn = async (on: Page): Promise<string> => {
  const alert = on.getByRole('alert').filter({ hasText: 'LINK_NOT_VALID' })
  await alert.waitFor()
  return (await alert.textContent()) ?? ''
}

describe('an observer on a desk that asks for sign-in', () => {
  it('asks for a link, opens it from the mail in the same browser, and the reading is in the ledger, sent by them', async () => {
    await page.goto(`${url}/my/`)
    const link = await askForLink(page, 'ona@people.example')
    const opened = await openIn(page.context(), link)
    await opened.waitForURL(`${url}/my/**`)
    await opened.getByTestId('waiting').waitFor()
    expect(await opened.getByRole('banner').textContent()).toContain(codes[0])
    expect(await opened.getByTestId('sign-in').count()).toBe(0)
    await reportNothing(opened, 'received')
    const own = (await (await page.context().request.get(`${url}/api/my/gauges/${codes[0]}`)).json()) as MyGauge
    const reading = own.readings.find(({ lastDay }) => lastDay === day)
    expect(reading?.text).toBe('0')
    const trail = JSON.parse(await gaugewright('audit', '--person', NAME, '--json')) as AuditTrail
    const sent = trail.entries.find(({ act }) => act === 'sendReadings')
    expect(sent).toMatchObject({ name: NAME, subject: reading?.id, result: 'done' })
    expect((await answerOf(codes[0]!))[0]).toMatch(/^read/)

    // The page that asked for the link goes on by itself when it is looked at again.
    await lookAgain(page)
    await page.getByTestId('waiting').waitFor()

    await opened.goto('about:blank')
    await opened.goto(link)
    expect(await refusedIn(opened)).toMatch(
      /was used, is too old, or was asked for in another browser.*Ask for a new link/,
    )
    await opened.close()
    expect(watched.foreign).toEqual([])
  })

  it('a link opened in another browser is refused in kind words, and still opens the right one', async () => {
    const asking = await watch(browser, url, phone)
    await asking.page.goto(`${url}/my/?gauge=${codes[0]}`)
    const link = await askForLink(asking.page, 'ona@people.example')
    const other = await watch(browser, url, { ...phone, locale: 'es-ES' })
    const opened = await openIn(other.page.context(), link)
    expect(await refusedIn(opened)).toMatch(/otro navegador/)
    expect(await (await other.page.context().request.get(`${url}/api/who`)).json()).toMatchObject({ actor: null })
    await other.close()
    const right = await openIn(asking.page.context(), link)
    await right.waitForURL(`${url}/my/**`)
    await asking.close()
  })

  it('a report that waited for the sign-in is sent once the link is opened, without being typed again', async () => {
    await givesGauges(codes[0]!, codes[1]!)
    await page.goto(`${url}/my/?gauge=${codes[1]}`)
    await page.getByTestId('waiting').waitFor()
    await page.evaluate(() =>
      fetch('/api/sign-out', { method: 'POST', headers: { 'content-type': 'application/json' }, body: '{}' }),
    )
    await reportNothing(page, 'waiting')
    const link = await askForLink(page, 'ona@people.example')
    const opened = await openIn(page.context(), link)
    await opened.waitForURL(`${url}/my/**`)
    await lookAgain(page)
    await page.locator('[data-state=received]').waitFor()
    await page.getByTestId('sign-in').waitFor({ state: 'detached' })
    expect((await answerOf(codes[1]!))[0]).toMatch(/^read/)
    await opened.close()
  })

  it('a report for a gauge that is no longer theirs is refused with the reason, and can be sent again', async () => {
    await givesGauges(codes[0]!, codes[2]!)
    await page.goto(`${url}/my/?gauge=${codes[2]}`)
    await page.getByTestId('waiting').waitFor()
    await givesGauges(codes[0]!)
    await reportNothing(page, 'refused')
    const report = page.getByTestId('report')
    expect(await report.textContent()).toMatch(/Needs your look.*not one that you are signed in for.*GAUGE_NOT_YOURS/)
    expect(await page.getByTestId('waiting').getAttribute('data-count')).toBe('0')
    await givesGauges(codes[0]!, codes[2]!)
    await report.getByRole('button', { name: 'Send it again' }).click()
    await page.locator('[data-state=received]').waitFor()
    expect((await answerOf(codes[2]!))[0]).toMatch(/^read/)
  })

  it('an absence is announced and taken back with the keyboard; the roll shows until when, then waits for a reading', async () => {
    const code = codes[3]!
    await givesGauges(code)
    await page.goto(`${url}/my/?gauge=${code}`)
    await page.getByRole('button', { name: 'Away' }).click()
    const last = new Date(Date.parse(day) + 4 * 86_400_000).toISOString().slice(0, 10)
    await page.getByLabel(/First morning/).fill(day)
    await page.getByLabel(/Last morning/).fill(last)
    await page.getByRole('button', { name: 'Tell my network' }).press('Enter')
    await page.getByTestId('absences').getByRole('listitem').waitFor()
    expect(await answerOf(code)).toEqual(['away', last])
    await page.getByRole('button', { name: /I will read after all/ }).press('Enter')
    await page.getByTestId('absences').getByRole('listitem').waitFor({ state: 'detached' })
    expect(await page.getByTestId('away-told').textContent()).toContain('you read the gauge again')
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-testid'))).toBe('away-told')
    expect(await answerOf(code)).toEqual(['silent', undefined])
  })
})

describe('the coordinator', () => {
  it('changes name, address, number and language of an observer at Settings; the trail tells which, and no value', async () => {
    const at = await watch(browser, url, desktop)
    await at.page.goto(`${url}/settings`)
    await at.page.getByRole('textbox', { name: 'Mail address' }).fill('marlow@desk.example')
    await at.page.getByLabel('Password', { exact: true }).fill(PASSWORD)
    await at.page.keyboard.press('Enter')
    await at.page.getByRole('button', { name: `Change ${NAME}` }).click()
    const dialog = at.page.getByRole('dialog')
    await dialog.getByLabel('Mail address').fill('marlow@desk.example')
    await dialog.getByRole('button', { name: 'Save' }).click()
    await dialog.getByRole('alert').filter({ hasText: 'MAIL_TAKEN' }).waitFor()
    await dialog.getByLabel('Name').fill('Ona Vale')
    await dialog.getByLabel('Mail address').fill('vale@people.example')
    await dialog.getByLabel('Number for text messages', { exact: false }).fill('+1 555 010 0123')
    await dialog.getByRole('radio', { name: 'Español' }).check({ force: true })
    await dialog.getByRole('button', { name: 'Save' }).click()
    await at.page.getByText('Ona Vale is changed.').waitFor()
    const { people } = await peopleNow()
    const changed = { name: 'Ona Vale', mail: 'vale@people.example', phone: '+15550100123', language: 'es' }
    expect(people).toEqual(expect.arrayContaining([expect.objectContaining(changed)]))
    const trail = at.page.getByTestId('trail')
    for (const what of ['a name', 'a mail address', 'a language', 'a number']) {
      await trail.getByText(`changed ${what}`).waitFor()
    }
    expect(await trail.textContent()).not.toMatch(/vale@|ona@|5550100/)
    expect(at.foreign).toEqual([])
    await at.close()
  })
})
