/** The rule on the Settings screen of the real desk: looked at, set, seen at work on Today, and set back. */
import type { DayReview, Rule } from '@gaugewright/contract'
import type { Browser, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { desktop, openBrowser, openPage, phone, type Watched, watch } from './openBrowser.ts'
import { openSettings } from './openSettings.ts'
import { type RunningDesk, startDesk } from './startDesk.ts'

let desk: RunningDesk
let browser: Browser
let watched: Watched

beforeAll(async () => {
  desk = await startDesk(['--years', '1', '--gauges', '90'])
  browser = await openBrowser()
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
const soon = <T>(look: () => T) => expect.poll(look, { timeout: 20_000 })
const ask = async <T>(path: string) => (await fetch(`${desk.url}${path}`)).json() as Promise<T>
const rule = () => ask<Rule>('/api/rule')
const latest = () => ask<DayReview>('/api/days/latest')
const pathOf = (page: Page) => new URL(page.url()).pathname
const figures = async (page: Page) => (await page.getByTestId('rule-figures').textContent()) ?? ''
const wrongAYear = async (page: Page) => Number(/about ([\d.]+) a year/.exec(await figures(page))?.[1])
const chooseRule = (page: Page) =>
  page.getByRole('radio', { name: 'Let stand when sure enough' }).check({ force: true })

describe('the way between the screens', () => {
  it('is a link, a key or an address; the browser’s own back button works', async () => {
    watched = await openPage(browser, desk.url, desktop)
    const { page } = watched
    const nav = page.getByRole('navigation', { name: 'Screens' })
    expect(await nav.getByRole('link', { name: 'Today' }).getAttribute('aria-current')).toBe('page')
    await nav.getByRole('link', { name: 'Settings' }).click()
    await page.getByRole('heading', { name: 'Automatic decisions' }).waitFor()
    expect(pathOf(page)).toBe('/settings')
    expect(await page.title()).toContain('Settings')
    await page.keyboard.press('1')
    await page.getByTestId('docket').waitFor()
    expect(pathOf(page)).toBe('/')
    await page.goBack()
    await page.getByRole('heading', { name: 'Automatic decisions' }).waitFor()
    await page.reload()
    await page.getByRole('heading', { name: 'Automatic decisions' }).waitFor()
  })

  it('a key typed into a field goes nowhere, and none does where single keys are switched off', async () => {
    watched = await watch(browser, desk.url, desktop)
    const { page } = watched
    await page.goto(`${desk.url}/settings`)
    await page.getByRole('textbox', { name: 'Why' }).pressSequentially('1 year')
    expect(pathOf(page)).toBe('/settings')
    await page.evaluate(() => localStorage.setItem('gaugewright.singleKeys', 'off'))
    await page.getByRole('heading', { name: 'Automatic decisions' }).click()
    await page.keyboard.press('1')
    await page.waitForTimeout(200)
    expect(pathOf(page)).toBe('/settings')
  })
})

describe('the rule', () => {
  it('past mornings are judged before the coordinator’s eyes; the slider then moves along the curve by keyboard', async () => {
    watched = await watch(browser, desk.url, desktop)
    const { page } = watched
    await page.goto(`${desk.url}/settings`)
    await page
      .getByText(/Judging past mornings: \d+ of \d+ days/)
      .or(page.getByTestId('rule-figures'))
      .first()
      .waitFor()
    await page.getByTestId('rule-figures').waitFor({ timeout: 110_000 })
    await chooseRule(page)
    const slider = page.getByRole('slider', { name: 'At least this sure' })
    const before = await wrongAYear(page)
    const label = () =>
      page.getByRole('img', { name: /Wrong readings let through in a year/ }).getAttribute('aria-label')
    const drawn = await label()
    await slider.focus()
    for (let i = 0; i < 40; i += 1) await page.keyboard.press('ArrowRight')
    expect(await wrongAYear(page)).toBeLessThan(before)
    expect(await label()).not.toBe(drawn)
    expect(await slider.getAttribute('aria-valuetext')).toMatch(/^0\.99\d*: [\d.]+ readings a morning left to you/)
    expect(await page.getByRole('textbox', { name: 'At least this sure' }).inputValue()).toMatch(/^0\.99/)
    expect((await rule()).history).toEqual([])
  })

  it('finds the threshold for a wished number of wrong readings, and asks back about what it cannot read', async () => {
    watched = await openSettings(browser, desk.url, desktop)
    const { page } = watched
    await chooseRule(page)
    await page.getByRole('textbox', { name: /wrong readings a year/ }).fill('9')
    await page.keyboard.press('Enter')
    await soon(() => wrongAYear(page)).toBeLessThanOrEqual(9)
    const field = page.getByRole('textbox', { name: 'At least this sure' })
    await field.fill('certain')
    await page.keyboard.press('Enter')
    await page.getByRole('alert').getByText('0.5 to 0.9999').waitFor()
    await field.fill('99 %')
    await page.keyboard.press('Enter')
    await soon(() => page.getByRole('textbox', { name: 'At least this sure' }).inputValue()).toBe('0.99')
  })

  it('is set with a reason, acts on the day, is taken back on one reading by hand, and is set back as a whole', async () => {
    watched = await openSettings(browser, desk.url, desktop)
    const { page } = watched
    const unruled = await latest()
    expect(unruled.roll.every((row) => row.decision === null)).toBe(true)
    await chooseRule(page)
    await page.getByRole('textbox', { name: 'At least this sure' }).fill('0.98')
    await page.getByRole('button', { name: 'Set the rule' }).click()
    const why = page.getByRole('textbox', { name: 'Why' })
    await page.getByRole('alert').getByText('Say in a few words why').waitFor()
    expect(await why.evaluate((field) => field === document.activeElement)).toBe(true)
    expect((await rule()).history).toEqual([])
    await why.fill('Storm season is over')
    await page.keyboard.press('Enter')
    await page.getByTestId('in-force').getByText('Let stand when at least 0.98 sure').waitFor()
    expect((await rule()).history).toMatchObject([{ letStandAt: 0.98, why: 'Storm season is over', by: 'coordinator' }])

    const ruled = (await latest()).roll.filter((row) => row.decision?.by.kind === 'rule')
    expect(ruled.length).toBeGreaterThan(30)
    for (const row of ruled) expect(row.standsOdds).toBeGreaterThanOrEqual(0.98)
    const gauge = ruled[3]!
    await page.goto(`${desk.url}/?gauge=${gauge.gaugeId}`)
    await page.waitForSelector(`[data-testid=evidence][data-reading="${gauge.readingId}"]`)
    await page.getByText(/stands by rule: at least 0.98 sure/).waitFor()
    await page.getByRole('button', { name: 'Take back' }).click()
    await soon(async () => (await latest()).docket.some((row) => row.readingId === gauge.readingId)).toBe(true)
    await soon(() => page.getByTestId('docket').getByText(gauge.name).count()).toBe(1)

    await page.keyboard.press('8')
    await page.getByRole('radio', { name: 'No rule' }).check({ force: true })
    await why.fill('I look at everything this week')
    await page.getByRole('button', { name: 'Switch the rule off' }).click()
    await page.getByTestId('in-force').getByText('No rule: you decide').waitFor()
    expect((await latest()).roll.filter((row) => row.decision?.by.kind === 'rule')).toEqual([])
    await page.getByRole('button', { name: /^Set again: at least 0.98/ }).click()
    expect(await why.inputValue()).toMatch(/^Back to the setting of /)
    await page.getByRole('button', { name: 'Set the rule' }).click()
    await soon(async () => (await rule()).history.map((setting) => setting.letStandAt)).toEqual([0.98, null, 0.98])
    const again = await latest()
    expect(again.roll.filter((row) => row.decision?.by.kind === 'rule').length).toBe(ruled.length - 1)
    expect(again.roll.find((row) => row.readingId === gauge.readingId)?.decision).toBeNull()
  })

  it('on a phone and at 200 % nothing is cut off sideways; the curve can be taken hold of', async () => {
    watched = await openSettings(browser, desk.url, phone)
    const { page } = watched
    for (const viewport of [phone.viewport, { width: 720, height: 450 }]) {
      await page.setViewportSize(viewport)
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0)
    }
    const plot = page.getByRole('img', { name: /Wrong readings let through in a year/ })
    await plot.scrollIntoViewIfNeeded()
    const box = (await plot.boundingBox())!
    const before = await page.getByRole('textbox', { name: 'At least this sure' }).inputValue()
    await page.mouse.click(box.x + box.width - 14, box.y + box.height / 2)
    expect(await page.getByRole('textbox', { name: 'At least this sure' }).inputValue()).not.toBe(before)
    expect((await rule()).history).toHaveLength(3)
  })
})
