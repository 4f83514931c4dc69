/** No serious or critical finding of axe on the Urgent screen, its dialogs and its settings: light and dark, desk and phone. */
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { fileHail } from './fileUrgent.ts'
import { desktop, openBrowser, phone, watch } from './openBrowser.ts'
import { seriousFindings } from './seriousFindings.ts'
import { type RunningDesk, startDesk } from './startDesk.ts'

let desk: RunningDesk
let browser: Browser
let id = ''

beforeAll(async () => {
  desk = await startDesk(['--years', '1', '--gauges', '60'])
  browser = await openBrowser()
  await fileHail(desk.url, 20, { by: 'Teal Rook' }, 600)
  id = (await fileHail(desk.url, 55)).id
})
afterAll(async () => {
  await browser?.close()
  await desk?.stop()
})

async function findings(page: Page): Promise<string[]> {
  await page.waitForTimeout(150)
  return seriousFindings(page)
}

for (const colorScheme of ['light', 'dark'] as const) {
  describe(`urgent, ${colorScheme}`, () => {
    it.each([
      ['at a desk', desktop],
      ['on a phone', phone],
    ])('list, report, both dialogs and settings have no finding %s', async (_, size) => {
      const { page, close } = await watch(browser, desk.url, { ...size, colorScheme })
      await page.goto(`${desk.url}/urgent`)
      await page.getByText('Live', { exact: true }).waitFor()
      expect(await findings(page)).toEqual([])
      await page.goto(`${desk.url}/urgent/${id}`)
      await page.getByTestId('urgent-panel').waitFor()
      expect(await findings(page)).toEqual([])
      await page.getByRole('button', { name: 'Pass on…' }).click()
      await page.getByTestId('coded-text').waitFor()
      expect(await findings(page)).toEqual([])
      await page.keyboard.press('Escape')
      await page.getByRole('button', { name: 'Close…' }).click()
      await page.getByRole('dialog').waitFor()
      expect(await findings(page)).toEqual([])
      await page.goto(`${desk.url}/settings`)
      const section = page.getByRole('region', { name: 'Urgent reports' })
      await section.getByRole('button', { name: 'Add a destination' }).click()
      expect(await findings(page)).toEqual([])
      expect(await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false)
      await close()
    })
  })
}

it('what is set in Settings is in force at once, and what contradicts itself is told', async () => {
  const { page, close } = await watch(browser, desk.url, desktop)
  await page.goto(`${desk.url}/settings`)
  const section = page.getByRole('region', { name: 'Urgent reports' })
  await section.getByLabel(/^Severe hail from/).fill('3')
  await section.getByRole('button', { name: 'Set', exact: true }).click()
  await section.getByText('URGENT_SETTINGS_NOT_VALID').waitFor()
  await section.getByLabel(/^Significant hail from/).fill('4')
  await section.getByLabel('Emergency number').fill('000')
  await section.getByRole('button', { name: 'Set', exact: true }).click()
  await expect
    .poll(async () => ((await (await fetch(`${desk.url}/api/urgent`)).json()) as { settings: object }).settings, {
      timeout: 10_000,
    })
    .toMatchObject({ severeHailMm: expect.closeTo(76.2, 6), emergencyNumber: '000' })
  await page.goto(`${desk.url}/urgent/${id}`)
  await page.getByText('In danger: 000.').waitFor()
  expect(await page.getByTestId('urgent-panel').textContent()).toContain('Near the threshold')
  await close()
})
