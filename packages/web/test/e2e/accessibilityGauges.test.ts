/** No serious or critical finding of axe on the Gauges screen: light and dark, at a desk and on a phone, every kind of plot. */
import type { Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { makeFixtureServer } from '../fixture/fixtureServer.ts'
import { gauges } from '../fixture/invented.ts'
import { desktop, openBrowser, phone } from './openBrowser.ts'
import { openGauges } from './openGauges.ts'
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

const allHabits = gauges[0]!.code
const noHabits = gauges[20]!.code

for (const colorScheme of ['light', 'dark'] as const) {
  describe(`gauges, ${colorScheme}`, () => {
    it.each([
      ['the list', undefined],
      ['a gauge with every habit', allHabits],
      ['a gauge with none, its plots opened', noHabits],
      ['a gauge that is not there', 'XXXXX'],
    ])('%s has no finding, at a desk and on a phone', async (_, code) => {
      for (const size of [desktop, phone]) {
        const { page, close } =
          code === 'XXXXX'
            ? await openGauges(browser, url, { ...size, colorScheme })
            : await openGauges(browser, url, { ...size, colorScheme }, code)
        if (code === 'XXXXX') {
          await page.goto(`${url}/gauges/XXXXX`)
          await page.getByRole('alert').waitFor()
        }
        if (code === noHabits)
          for (const one of await page.locator('summary').all()) if (await one.isVisible()) await one.click()
        await page.waitForTimeout(150)
        expect(await seriousFindings(page)).toEqual([])
        const tooWide = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)
        expect(tooWide).toBe(false)
        await close()
      }
    })
  })
}
