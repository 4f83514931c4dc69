/** No serious or critical finding of axe, light and dark, at a desk and on a phone, in every state of the screen. */

import type { Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { makeFixtureServer } from '../fixture/fixtureServer.ts'
import { desktop, openBrowser, openPage, phone } from './openBrowser.ts'
import { openSettings } from './openSettings.ts'
import { seriousFindings } from './seriousFindings.ts'

let server: Server
let url: string
let browser: Browser

beforeAll(async () => {
  server = makeFixtureServer()
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
  server?.closeAllConnections()
  server?.close()
})

const states: Record<string, (page: Page) => Promise<unknown>> = {
  docket: async () => undefined,
  roll: (page) => page.keyboard.press('l'),
  'what-if': (page) => page.keyboard.press('w'),
  'what-if of letting stand': async (page) => {
    const slipped = page.getByTestId('docket').getByRole('button').filter({ hasText: 'decimal point slipped' })
    await slipped.first().click()
    await page.getByTestId('what-if').getByRole('radio', { name: 'Stands' }).check({ force: true })
    await page.locator('[data-testid=what-if][data-act=stands] tr[data-reading]').first().waitFor()
  },
  keys: (page) => page.keyboard.press('?'),
  amend: (page) => page.keyboard.press('a'),
  asked: (page) => page.keyboard.press('q'),
  decided: async (page) => {
    await page.keyboard.press('s')
    await page.getByTestId('effect').waitFor()
  },
  problem: async (page) => {
    await page.keyboard.press('r')
    await page.keyboard.type('refuse')
    await page.keyboard.press('Enter')
    await page.keyboard.press('s')
    await page.getByRole('alert').waitFor()
  },
  view: async (page) => {
    await page.getByRole('button', { name: 'View' }).click()
  },
}

const settingsStates: Record<string, (page: Page) => Promise<unknown>> = {
  'no rule': async () => undefined,
  'a rule being chosen': async (page) => {
    await page.getByRole('radio', { name: 'Let stand when sure enough' }).check({ force: true })
    await page.getByRole('slider').press('ArrowRight')
  },
  'a reason missing': async (page) => {
    await page.getByRole('radio', { name: 'Let stand when sure enough' }).check({ force: true })
    await page.getByRole('button', { name: 'Set the rule' }).click()
    // The sections whose routes this server does not have say so in alerts of their own.
    await page.getByRole('alert').filter({ hasText: 'Say in a few words why' }).waitFor()
  },
  'one setting after another': async (page) => {
    for (const mode of ['Let stand when sure enough', 'No rule']) {
      await page.getByRole('radio', { name: mode }).check({ force: true })
      await page.getByRole('textbox', { name: 'Why' }).fill('a trial')
      await page.getByRole('textbox', { name: 'Why' }).press('Enter')
      await page.getByText('Set. It holds').waitFor()
    }
    await page
      .getByRole('button', { name: /^Set again/ })
      .first()
      .waitFor()
  },
}

for (const colorScheme of ['light', 'dark'] as const) {
  describe(`settings, ${colorScheme}`, () => {
    for (const [name, reach] of Object.entries(settingsStates))
      it(`${name} has no finding, at a desk and on a phone`, async () => {
        for (const size of [desktop, phone]) {
          const { page, close } = await openSettings(browser, url, { ...size, colorScheme })
          await reach(page)
          await page.waitForTimeout(150)
          expect(await seriousFindings(page)).toEqual([])
          await close()
        }
      })
  })
  describe(`at a desk, ${colorScheme}`, () => {
    for (const [name, reach] of Object.entries(states))
      it(`${name} has no finding`, async () => {
        const { page, close } = await openPage(browser, url, { ...desktop, colorScheme })
        await reach(page)
        await page.waitForTimeout(150)
        expect(await seriousFindings(page)).toEqual([])
        await close()
      })
  })
  describe(`on a phone, ${colorScheme}`, () => {
    for (const tab of ['Docket', 'Evidence', 'Map', 'Roll'])
      it(`${tab} has no finding`, async () => {
        const { page, close } = await openPage(browser, url, { ...phone, colorScheme })
        await page.getByRole('navigation').getByRole('button', { name: tab }).tap()
        await page.waitForTimeout(150)
        expect(await seriousFindings(page)).toEqual([])
        await close()
      })
  })
}
