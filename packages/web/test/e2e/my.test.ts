/** The observer's page against a real desk: few taps, asked back, offline through a closed browser, corrections. */
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { CheckedEntry } from '@gaugewright/contract'
import { type Browser, chromium } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { browserOptions, openBrowser, phone, watch } from './openBrowser.ts'
import { demoDay, openMy, pageOf, readingsOn, silentGauges, typeAmount } from './openMy.ts'
import { signalTo } from './signal.ts'
import { type RunningDesk, startDesk } from './startDesk.ts'

let desk: RunningDesk
let browser: Browser
let url: string
let day: string
let silent: string[]

beforeAll(async () => {
  ;[desk, browser] = await Promise.all([startDesk(), openBrowser()])
  url = desk.url
  day = await demoDay(url)
  silent = await silentGauges(url)
})
afterAll(async () => {
  await browser?.close()
  await desk?.stop()
})

const nextSilent = () => silent.shift()!

/** A silent gauge at which an amount would be asked about: there was no such rain around it. */
async function silentWhereAsked(text: string): Promise<string> {
  for (const code of silent) {
    const ask = { gauge: code, firstDay: day, lastDay: day, text, unit: 'in' }
    const answer = await fetch(`${url}/api/my/check`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(ask),
    })
    const { question } = (await answer.json()) as CheckedEntry
    const isNamed = question?.alternatives.some(({ amountUm }) => amountUm !== null)
    if (isNamed === true) return silent.splice(silent.indexOf(code), 1)[0]!
  }
  throw new Error(`no silent gauge at which ${text} is asked about`)
}

describe('the morning reading', () => {
  it('a zero takes two taps, and its state is seen: received', async () => {
    const code = nextSilent()
    const { page, troubles, foreign, close } = await watch(browser, url, phone)
    await openMy(page, url, code)
    await page.getByRole('radio', { name: /Nothing/ }).check()
    await page.getByTestId('send').click()
    const back = page.getByTestId('ask-back').getByRole('button', { name: /It is/ })
    await Promise.race([back.waitFor(), page.locator('[data-state=received]').waitFor()])
    if (await back.isVisible()) await back.click()
    await page.locator('[data-state=received]').waitFor()
    expect((await readingsOn(url, code, day)).map(({ text }) => text)).toEqual(['0'])
    expect(troubles).toEqual([])
    expect(foreign).toEqual([])
    await close()
  })

  it('4.00 and 0.40 are drawn nothing alike, and the page asks which of them it is', async () => {
    const code = await silentWhereAsked('4.00')
    const { page, close } = await watch(browser, url, phone)
    await openMy(page, url, code)
    await typeAmount(page, '40')
    const drawing = page.getByTestId('gauge-drawing')
    expect(await drawing.getAttribute('data-um')).toBe('10160')
    expect(await drawing.getAttribute('aria-label')).toContain('the fourth long line')
    const low = await drawing.screenshot()
    await page.getByRole('button', { name: '0', exact: true }).click()
    expect(await page.getByTestId('typed').textContent()).toMatch(/4\s*\.\s*00/)
    expect(await drawing.getAttribute('aria-label')).toContain('4 full tubes')
    expect((await drawing.screenshot()).equals(low)).toBe(false)
    await page.getByTestId('send').click()
    const question = page.getByTestId('ask-back')
    await question.waitFor()
    expect(await question.textContent()).toContain('You typed 4.00 in.')
    const choices = question.getByRole('button', { name: /It is/ })
    expect(await choices.count()).toBeGreaterThan(1)
    // The second choice is the smaller amount that the page offers; it is stored with what stood there first.
    await choices.nth(1).click()
    await page.locator('[data-state=received]').waitFor()
    const [stored] = await readingsOn(url, code, day)
    expect(['0.40', '0.04', '0.16']).toContain(stored?.text)
    await close()
  })

  it('several fills of the tube are added up exactly', async () => {
    const code = nextSilent()
    const { page, close } = await watch(browser, url, phone)
    await openMy(page, url, code)
    await typeAmount(page, '34')
    await page.getByRole('button', { name: /A full tube/ }).click()
    expect(await page.getByTestId('fills-sum').textContent()).toContain('1.34 in')
    await page.getByTestId('send').click()
    const back = page.getByTestId('ask-back').getByRole('button', { name: 'It is 1.34 in' })
    await Promise.race([back.waitFor(), page.locator('[data-state=received]').waitFor()])
    if (await back.isVisible()) await back.click()
    await page.locator('[data-state=received]').waitFor()
    expect(await readingsOn(url, code, day)).toMatchObject([{ amountUm: 34_036, text: '1.00 + 0.34' }])
    await close()
  })

  it('dew is explained where a trace is chosen, in Spanish for a Spanish browser, in millimetres where wished', async () => {
    const code = nextSilent()
    const { page, close } = await watch(browser, url, { ...phone, locale: 'es-ES' })
    await openMy(page, url, code)
    await page.getByRole('radio', { name: /Traza/ }).check()
    expect(await page.getByTestId('dew').textContent()).toContain('rocío')
    await page.getByRole('button', { name: 'Opciones' }).click()
    await page.getByRole('radio', { name: 'milímetros' }).check()
    await page.getByRole('button', { name: 'Informe' }).click()
    await typeAmount(page, '102')
    expect(await page.getByTestId('typed').textContent()).toMatch(/10\s*,\s*2\s*mm/)
    await close()
  })
})

describe('without a signal', () => {
  it('a report typed offline survives a closed browser, is sent once when the signal is back, and its state is seen', async () => {
    const code = nextSilent()
    const folder = await mkdtemp(join(tmpdir(), 'gaugewright-phone-'))
    const signal = await signalTo(url)
    const onPhone = (offline: boolean) =>
      chromium.launchPersistentContext(folder, { ...browserOptions, ...phone, locale: 'en-US', offline })
    const first = await onPhone(false)
    const before = await first.newPage()
    await openMy(before, signal.url, code)
    await signal.cut()
    await first.setOffline(true)
    await typeAmount(before, '12')
    await before.getByTestId('send').click()
    const back = before.getByTestId('ask-back').getByRole('button', { name: 'It is 0.12 in' })
    await Promise.race([back.waitFor(), before.locator('[data-state=waiting]').waitFor()])
    if (await back.isVisible()) await back.click()
    await before.locator('[data-state=waiting]').waitFor()
    expect(await before.getByTestId('report').textContent()).toContain('On this phone, not sent yet')
    await first.close()
    expect(await readingsOn(url, code, day)).toEqual([])

    const second = await onPhone(true)
    const after = await second.newPage()
    await after.goto(pageOf(signal.url, code))
    await after.locator('[data-state=waiting]').waitFor()
    expect(await after.getByTestId('waiting').getAttribute('data-count')).toBe('1')
    // Two pages at once, so that two want to send when the signal is back.
    const twin = await second.newPage()
    await twin.goto(pageOf(signal.url, code))
    await twin.locator('[data-state=waiting]').waitFor()
    await signal.mend()
    await second.setOffline(false)
    await after.locator('[data-state=received]').waitFor({ timeout: 30_000 })
    expect(await readingsOn(url, code, day)).toMatchObject([{ text: '0.12', amountUm: 3048, isCorrection: false }])
    await after.reload()
    await after.locator('[data-state=received]').waitFor()
    expect(await readingsOn(url, code, day)).toHaveLength(1)
    await second.close()
    await signal.cut()
    await rm(folder, { recursive: true, force: true })
  })

  it('the worker sends what waits where the browser lets it, though the page itself cannot', async () => {
    const code = nextSilent()
    const { page, close } = await watch(browser, url, phone)
    await openMy(page, url, code)
    await page.route('**/api/my/**', (route) => route.abort())
    await typeAmount(page, '13')
    await page.getByTestId('send').click()
    const back = page.getByTestId('ask-back').getByRole('button', { name: 'It is 0.13 in' })
    await Promise.race([back.waitFor(), page.getByTestId('report').waitFor()])
    if (await back.isVisible()) await back.click()
    await page.getByTestId('report').waitFor()
    const until = Date.now() + 10_000
    while ((await readingsOn(url, code, day)).length === 0 && Date.now() < until) {
      await new Promise((resolve) => setTimeout(resolve, 200))
    }
    expect((await readingsOn(url, code, day)).map(({ text }) => text)).toEqual(['0.13'])
    await close()
  })

  it('an amount that the place has hardly ever had is asked about offline too', async () => {
    const code = nextSilent()
    const { page, close } = await watch(browser, url, phone)
    await openMy(page, url, code)
    await page.context().setOffline(true)
    await typeAmount(page, '940')
    await page.getByTestId('send').click()
    await page.getByTestId('ask-back').waitFor()
    expect(await page.getByTestId('ask-back').textContent()).toContain('You typed 9.40 in.')
    await page.getByRole('button', { name: /Go back/ }).click()
    await close()
  })
})

describe('one’s own record', () => {
  it('a reading is corrected from the record; the old one is kept beside it', async () => {
    const code = nextSilent()
    const { page, close } = await watch(browser, url, phone)
    await openMy(page, url, code)
    await page.getByRole('button', { name: 'My record' }).click()
    await page.getByTestId('month-total').waitFor()
    await page
      .getByRole('button', { name: /^Correct/ })
      .first()
      .click()
    await typeAmount(page, '23')
    await page.getByTestId('send').click()
    const back = page.getByTestId('ask-back').getByRole('button', { name: 'It is 0.23 in' })
    await Promise.race([back.waitFor(), page.locator('[data-state=received]').waitFor()])
    if (await back.isVisible()) await back.click()
    await page.locator('[data-state=received]').waitFor()
    const own = (await (await fetch(`${url}/api/my/gauges/${code}`)).json()) as { readings: { text: string }[] }
    expect(own.readings[0]).toMatchObject({ text: '0.23', isCorrection: true })
    await close()
  })

  it('an absence announced ahead is listed, and the page of any observer opens from Gauges', async () => {
    const code = nextSilent()
    const { page, close } = await watch(browser, url, phone)
    await page.goto(`${url}/gauges/${code}`)
    await page.getByTestId('observers-page').click({ timeout: 110_000 })
    await page.getByTestId('waiting').waitFor()
    await page.getByRole('button', { name: 'Away' }).click()
    await page.getByLabel(/First morning/).fill('2026-08-03')
    await page.getByLabel(/Last morning/).fill('2026-08-12')
    await page.getByRole('button', { name: /Tell my network/ }).click()
    await page.getByTestId('absences').getByText('August 12').waitFor()
    await close()
  })
})
