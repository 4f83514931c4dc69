/** People and access on the real desk: it opens at once, then asks for a password, lets a viewer look and not decide. */
import type { Browser, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { desktop, openBrowser, openPage, phone, type Watched, watch } from './openBrowser.ts'
import { runGaugewright } from './runGaugewright.ts'
import { type RunningDesk, startDesk } from './startDesk.ts'

const PASSWORD = 'tin roof and slow rain'
let desk: RunningDesk
let browser: Browser
let watched: Watched

beforeAll(async () => {
  desk = await startDesk(['--years', '1', '--gauges', '40'])
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
  await desk?.stop()
})
afterEach(async () => {
  expect(watched.foreign).toEqual([])
  await watched.close()
})

const signIn = async (page: Page, mail: string, password: string) => {
  await page.getByRole('textbox', { name: 'Mail address' }).fill(mail)
  await page.getByLabel('Password', { exact: true }).fill(password)
  await page.keyboard.press('Enter')
}
const trail = (page: Page) => page.getByTestId('trail').textContent()

describe('people and access', () => {
  it('opens at once on this computer; a coordinator adds people and gives the first password by keyboard alone', async () => {
    watched = await openPage(browser, desk.url, desktop)
    const { page } = watched
    await page.goto(`${desk.url}/settings`)
    const section = page.getByRole('region', { name: 'People and access' })
    await section.getByText('Nobody has a password yet', { exact: false }).waitFor()
    for (const [name, mail, role] of [
      ['Marlow Finch', 'marlow@desk.example', 'coordinator'],
      ['Vera Lake', 'vera@desk.example', 'viewer'],
    ] as const) {
      await section.getByLabel('Name', { exact: true }).focus()
      await page.keyboard.type(name)
      await page.keyboard.press('Tab')
      await page.keyboard.type(mail)
      await section.getByRole('combobox', { name: 'Role', exact: true }).selectOption(role)
      await section.getByLabel('Name', { exact: true }).focus()
      await page.keyboard.press('Enter')
      await section.getByText(`${name} is added.`).waitFor()
    }
    await expect.poll(() => trail(page)).toMatch(/coordinator added a person/)
    await section.getByRole('button', { name: 'Password for Marlow Finch' }).focus()
    await page.keyboard.press('Enter')
    await page.getByLabel('New password, at least 12 characters').fill('marlowfinch12')
    await page.keyboard.press('Enter')
    await page.getByRole('alert').filter({ hasText: 'PASSWORD_GUESSABLE' }).waitFor()
    await page.getByLabel('New password, at least 12 characters').fill(PASSWORD)
    await page.keyboard.press('Enter')
    // From now on the desk asks everybody, this page among them.
    await page.getByRole('heading', { name: 'Sign in' }).waitFor()
  })

  it('signs the coordinator in, shows who it is, and signs out', async () => {
    watched = await watch(browser, desk.url, phone)
    const { page } = watched
    await page.goto(`${desk.url}/settings`)
    await page.getByRole('heading', { name: 'Sign in' }).waitFor()
    await signIn(page, 'marlow@desk.example', 'not the password')
    await page.getByRole('alert').filter({ hasText: 'do not fit' }).waitFor()
    await signIn(page, 'marlow@desk.example', PASSWORD)
    await page.getByRole('region', { name: 'People and access' }).waitFor()
    expect(new URL(page.url()).pathname).toBe('/settings')
    await expect.poll(() => trail(page)).toMatch(/Marlow Finch signed in/)
    const section = page.getByRole('region', { name: 'People and access' })
    await section.getByLabel('Role of Marlow Finch').selectOption('viewer')
    await section.getByRole('button', { name: 'Change the role of Marlow Finch' }).click()
    await page.getByRole('alert').filter({ hasText: 'LAST_COORDINATOR' }).waitFor()
    await section.getByLabel('Role of Vera Lake').selectOption('colleague')
    await section.getByRole('button', { name: 'Change the role of Vera Lake' }).click()
    await expect.poll(() => trail(page)).toMatch(/Marlow Finch changed a role or gauges\s*Vera Lake/)
    await section.getByLabel('Role of Vera Lake').selectOption('viewer')
    await section.getByRole('button', { name: 'Change the role of Vera Lake' }).click()
    await expect.poll(async () => (await trail(page))?.match(/changed a role or gauges/g)?.length).toBe(2)
    await page.getByRole('button', { name: 'View' }).click()
    await page.getByText('Signed in as Marlow Finch, coordinator').waitFor()
    await page.getByRole('button', { name: 'Sign out' }).click()
    await page.getByRole('heading', { name: 'Sign in' }).waitFor()
    await page.goto(`${desk.url}/settings`)
    await page.getByRole('heading', { name: 'Sign in' }).waitFor()
  })

  it('lets a viewer look, refuses what they decide, and shows them no people', async () => {
    await runGaugewright(['people', 'password', 'Vera Lake', '--db', desk.ledger], `${PASSWORD}\n`)
    watched = await watch(browser, desk.url, desktop)
    const { page } = watched
    await page.goto(desk.url)
    await signIn(page, 'vera@desk.example', PASSWORD)
    await page.waitForSelector('[data-testid=evidence][data-reading]', { state: 'attached' })
    // What a decision would do may be asked by whoever may look.
    await page.getByTestId('what-if').locator('[class*=told]').waitFor({ state: 'attached' })
    expect(await page.getByRole('alert').count()).toBe(0)
    await page.keyboard.press('s')
    await page.getByRole('alert').filter({ hasText: 'ROLE_TOO_LOW' }).waitFor()
    await page.goto(`${desk.url}/settings`)
    await page.getByRole('heading', { name: 'Automatic decisions' }).waitFor()
    expect(await page.getByRole('region', { name: 'People and access' }).count()).toBe(0)
  })
})
