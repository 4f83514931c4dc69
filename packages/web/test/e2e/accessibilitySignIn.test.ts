/** No serious or critical finding of axe on signing in and on people and access: light and dark, at a desk and on a phone. */
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { desktop, openBrowser, phone, watch } from './openBrowser.ts'
import { runGaugewright } from './runGaugewright.ts'
import { seriousFindings } from './seriousFindings.ts'
import { type RunningDesk, startDesk } from './startDesk.ts'

let desk: RunningDesk
let browser: Browser

beforeAll(async () => {
  desk = await startDesk(['--years', '1', '--gauges', '40'])
  const people = ['people', 'add', '--db', desk.ledger]
  await runGaugewright([...people, 'Marlow Finch', '--role', 'coordinator', '--mail', 'marlow@desk.example'])
  await runGaugewright([...people, 'Ona Reed', '--role', 'observer', '--mail', 'a.rather.long.address@people.example'])
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
  await desk?.stop()
})

async function findings(page: Page): Promise<string[]> {
  await page.waitForTimeout(150)
  const found = await seriousFindings(page)
  const isTooWide = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)
  return [...found, ...(isTooWide ? ['the page is wider than the screen'] : [])]
}

for (const colorScheme of ['light', 'dark'] as const) {
  for (const [where, size] of [
    ['at a desk', desktop],
    ['on a phone', phone],
  ] as const) {
    describe(`${colorScheme}, ${where}`, () => {
      it('signing in has no finding: each way, with what is missing and with a problem', async () => {
        const { page, close } = await watch(browser, desk.url, { ...size, colorScheme })
        await page.goto(`${desk.url}/sign-in#link=no-such-link`)
        await page.getByRole('alert').filter({ hasText: 'LINK_NOT_VALID' }).waitFor()
        expect(await findings(page)).toEqual([])
        await page.getByRole('button', { name: 'Sign in' }).click()
        expect(await findings(page)).toEqual([])
        await page.getByRole('radio', { name: 'With a link by mail' }).check({ force: true })
        expect(await findings(page)).toEqual([])
        await close()
      })

      it('people and access has no finding, nor its dialogs', async () => {
        const { page, close } = await watch(browser, desk.url, { ...size, colorScheme })
        await page.goto(`${desk.url}/settings`)
        await page.getByTestId('people').getByText('Ona Reed', { exact: true }).waitFor()
        await page.getByTestId('trail').getByText('added a person').first().waitFor()
        expect(await findings(page)).toEqual([])
        for (const name of ['Change Ona Reed', 'Password for Ona Reed', 'Forget Ona Reed']) {
          await page.getByRole('button', { name }).click()
          await page.getByRole('dialog').waitFor()
          expect(await findings(page)).toEqual([])
          await page.keyboard.press('Escape')
          await page.getByRole('dialog').waitFor({ state: 'detached' })
        }
        await close()
      })
    })
  }
}
