/** Keys for programs on the Settings screen: made, shown once, used against the real desk, revoked; by keyboard, small and dark. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { desktop, openBrowser, phone, watch } from './openBrowser.ts'
import { type RunningDesk, startDesk } from './startDesk.ts'

let desk: RunningDesk
let browser: Browser

beforeAll(async () => {
  desk = await startDesk(['--years', '1', '--gauges', '60'])
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
  await desk?.stop()
})
const network = (key: string) => fetch(`${desk.url}/api/v1/network`, { headers: { authorization: `Bearer ${key}` } })

describe('keys for programs', () => {
  it('are made by keyboard, shown once, open the desk to a program, and are revoked', async () => {
    const watched = await watch(browser, desk.url, desktop)
    const { page } = watched
    await page.goto(`${desk.url}/settings`)
    const region = page.getByRole('region', { name: 'Keys for programs' })
    await region.getByRole('textbox', { name: 'Who will use it' }).focus()
    await page.keyboard.type('River authority')
    await region.getByRole('checkbox', { name: 'sending readings' }).press('Space')
    await region.getByRole('button', { name: 'Make it' }).press('Enter')
    await region.getByText('Tick at least one.').waitFor()
    await region.getByRole('checkbox', { name: 'reading what was accepted' }).press('Space')
    await region.getByRole('button', { name: 'Make it' }).press('Enter')
    const secret = await region.getByTestId('key-secret').inputValue()
    expect(secret).toMatch(/^gauge_/)
    expect((await network(secret)).status).toBe(200)
    await region.getByRole('button', { name: 'I have it' }).press('Enter')
    await region.getByTestId('keys').getByText('River authority').waitFor()
    expect(await page.content()).not.toContain(secret)
    await region.getByRole('button', { name: 'Revoke the key of River authority' }).press('Enter')
    await page.getByRole('dialog').getByRole('button', { name: 'Revoke', exact: true }).press('Enter')
    await region.getByText('revoked', { exact: false }).first().waitFor()
    await expect.poll(async () => (await network(secret)).status).toBe(401)
    expect(watched.foreign).toEqual([])
    expect(watched.troubles).toEqual([])
    await watched.close()
  })

  it.each([
    ['a desktop in light', { ...desktop, colorScheme: 'light' as const }],
    ['a phone in dark', { ...phone, colorScheme: 'dark' as const }],
  ])('and the page that describes the interface are accessible on %s, and fit it', async (_name, options) => {
    const watched = await watch(browser, desk.url, options)
    const { page } = watched
    for (const [path, scope] of [
      ['/settings', 'section[aria-labelledby="keys-heading"]'],
      ['/api/v1', 'body'],
    ] as const) {
      await page.goto(`${desk.url}${path}`)
      await page.locator(scope).waitFor()
      const { violations } = await new AxeBuilder({ page }).include(scope).analyze()
      expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([])
      const isWide = await page.evaluate(() => document.documentElement.scrollWidth > window.innerWidth)
      expect(isWide, path).toBe(false)
    }
    expect(watched.foreign).toEqual([])
    expect(watched.troubles).toEqual([])
    await watched.close()
  })
})
