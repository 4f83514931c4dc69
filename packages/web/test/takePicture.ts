/**
 * Makes docs/images/today.png, the picture in the README, from a demo of its own. Build first, then:
 * node --conditions=source --import tsx packages/web/test/takePicture.ts
 */
import { fileURLToPath } from 'node:url'
import { chosenReading, desktop, openBrowser, openPage, otherReading } from './e2e/openBrowser.ts'
import { startDesk } from './e2e/startDesk.ts'

const picture = fileURLToPath(new URL('../../../docs/images/today.png', import.meta.url))
const desk = await startDesk([]) // the whole demo, as `gaugewright demo` makes it
const browser = await openBrowser()
try {
  const { page } = await openPage(browser, desk.url, { ...desktop, colorScheme: 'light' })
  const first = await chosenReading(page)
  await page.keyboard.press('j')
  await otherReading(page, first)
  await page.waitForTimeout(1500)
  await page.screenshot({ path: picture })
} finally {
  await browser.close()
  await desk.stop()
}
