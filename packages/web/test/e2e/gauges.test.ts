/** The Gauges screen of the real desk: the list, one gauge after the other by keyboard, its habits with their plots. */
import type { GaugeHabitsAnswer, NetworkHabitsAnswer } from '@gaugewright/contract'
import type { Browser, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { desktop, openBrowser, phone, type Watched, watch } from './openBrowser.ts'
import { openGauges } from './openGauges.ts'
import { type RunningDesk, startDesk } from './startDesk.ts'

let desk: RunningDesk
let browser: Browser
let watched: Watched
let network: NetworkHabitsAnswer

beforeAll(async () => {
  desk = await startDesk(['--years', '2', '--gauges', '90'])
  browser = await openBrowser()
  network = await ask<NetworkHabitsAnswer>('/api/habits')
})
afterAll(async () => {
  await browser?.close()
  await desk?.stop()
})
afterEach(async () => {
  expect(watched.foreign).toEqual([])
  expect(watched.troubles).toEqual([])
  await watched.close()
})
const ask = async <T>(path: string) => (await fetch(`${desk.url}${path}`)).json() as Promise<T>
const shownCode = (page: Page) => page.getByTestId('gauge').getAttribute('data-code')
const soon = <T>(look: () => T) => expect.poll(look, { timeout: 20_000 })
const withHabits = () => network.gauges.filter(({ habits }) => habits.length > 0)

describe('the list of gauges', () => {
  it('shows those with a habit, the strongest first, each with its kinds in words; the first is open', async () => {
    watched = await openGauges(browser, desk.url, desktop)
    const { page } = watched
    const list = page.getByTestId('gauge-list')
    expect(await list.getByRole('link').count()).toBe(withHabits().length)
    const first = withHabits()[0]!
    expect(await list.getByRole('link').first().textContent()).toContain(first.name)
    await page.getByTestId('gauge').waitFor()
    expect(await shownCode(page)).toBe(first.code)
    await page.getByRole('radio', { name: 'All' }).check({ force: true })
    await page.getByText(`${network.gauges.length} of ${network.gauges.length} gauges`).waitFor()
  })

  it('is gone through by keyboard alone: j and k step, / searches, Enter goes there, 1 leads to Today', async () => {
    watched = await openGauges(browser, desk.url, desktop)
    const { page } = watched
    await page.getByTestId('gauge').waitFor()
    const [first, second] = withHabits()
    await page.keyboard.press('j')
    await soon(() => shownCode(page)).toBe(second!.code)
    expect(new URL(page.url()).pathname).toBe(`/gauges/${second!.code}`)
    await page.keyboard.press('k')
    await soon(() => shownCode(page)).toBe(first!.code)
    await page.keyboard.press('/')
    await page.keyboard.type(second!.code.toLowerCase())
    await page.keyboard.press('Enter')
    await soon(() => shownCode(page)).toBe(second!.code)
    await page.keyboard.press('Escape')
    await page.keyboard.press('1')
    await page.getByTestId('docket').waitFor()
    await page.keyboard.press('3')
    await page.getByTestId('gauge-list').waitFor()
  })

  it('is found from the other screens, and by its address', async () => {
    watched = await watch(browser, desk.url, desktop)
    const { page } = watched
    await page.goto(desk.url)
    await page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name: 'Gauges' }).click()
    await page.getByTestId('gauge-list').waitFor()
    expect(await page.title()).toContain('Gauges')
    await page.goto(`${desk.url}/gauges/${withHabits()[1]!.code}`)
    await soon(() => shownCode(page)).toBe(withHabits()[1]!.code)
    expect(await page.title()).toContain(withHabits()[1]!.name)
  })
})

describe('one gauge', () => {
  it('tells each habit in a sentence with something kind to do, and draws it with its figures in words', async () => {
    const code = withHabits().find(({ habits }) => habits.some(({ kind }) => kind === 'fives' || kind === 'tens'))!.code
    const habits = await ask<GaugeHabitsAnswer>(`/api/habits/${code}`)
    watched = await openGauges(browser, desk.url, desktop, code)
    const { page } = watched
    const told = habits.habits.filter(({ isHabit }) => isHabit)
    for (const { kind, sentence, advice } of told) {
      const card = page.locator(`article[data-kind="${kind}"]`)
      expect(await card.textContent()).toContain(sentence)
      expect(await card.textContent()).toContain(advice)
    }
    const digits = page.getByRole('img', { name: /Last digits of its amounts/ }).first()
    const zeros = habits.lastDigits.counts[0]!
    expect(await digits.getAttribute('aria-label')).toContain(`0: ${zeros} (unrounded`)
    const dates = page.locator('summary', { hasText: 'Dates' })
    await dates.focus()
    await page.keyboard.press('Enter')
    await page.getByRole('img', { name: /Agreement with the gauges around.*the same day: 0\.\d\d/ }).waitFor()
  })

  it('speaks Spanish in its own words, and marks what the desk says in another language', async () => {
    watched = await openGauges(browser, desk.url, { ...desktop, locale: 'es-ES' }, withHabits()[0]!.code)
    const { page } = watched
    await page.evaluate(() => localStorage.setItem('gaugewright.language', 'es'))
    await page.reload()
    await page.getByRole('heading', { name: 'Nada fuera de lo común en' }).waitFor()
    expect(await page.locator('article p[lang=en]').count()).toBeGreaterThan(0)
  })

  it('takes the place of the list on a phone, with the way back; the focus goes along; nothing is cut off', async () => {
    watched = await openGauges(browser, desk.url, phone)
    const { page } = watched
    const first = withHabits()[0]!
    await page.getByTestId('gauge-list').getByRole('link').first().tap()
    await soon(() => page.evaluate(() => document.activeElement?.textContent)).toBe(first.name)
    expect(await page.getByTestId('gauge-list').isVisible()).toBe(false)
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360)
    await page.getByRole('link', { name: 'All gauges' }).tap()
    await soon(() => page.getByTestId('gauge-list').isVisible()).toBe(true)
    expect(await page.getByTestId('gauge').isVisible()).toBe(false)
  })
})
