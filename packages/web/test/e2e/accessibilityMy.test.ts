/** No serious or critical finding of axe on the observer's page, light and dark, at 360 px; nothing runs out of its side. */
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { desktop, openBrowser, phone, watch } from './openBrowser.ts'
import { openMy, silentGauges, typeAmount } from './openMy.ts'
import { seriousFindings } from './seriousFindings.ts'
import { type RunningDesk, startDesk } from './startDesk.ts'

let desk: RunningDesk
let browser: Browser
let code: string
beforeAll(async () => {
  ;[desk, browser] = await Promise.all([startDesk(), openBrowser()])
  code = (await silentGauges(desk.url))[0]!
})
afterAll(async () => {
  await browser?.close()
  await desk?.stop()
})

async function findings(page: Page): Promise<string[]> {
  const found = await seriousFindings(page)
  const isWide = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)
  return [...found, ...(isWide ? ['wider than the screen'] : [])]
}

describe.each(['light', 'dark'] as const)('my gauge, %s', (colorScheme) => {
  it.each([
    ['phone, English', { ...phone, locale: 'en-US' }],
    ['phone, Spanish', { ...phone, locale: 'es-MX' }],
    ['desktop', desktop],
  ])('%s: report, question, record, absence and options have no finding', async (_, size) => {
    const { page, close } = await watch(browser, desk.url, { ...size, colorScheme })
    await openMy(page, desk.url, code)
    expect(await findings(page)).toEqual([])
    await typeAmount(page, '400')
    expect(await findings(page)).toEqual([])
    await page.getByTestId('send').click()
    await page.getByTestId('ask-back').waitFor()
    expect(await findings(page)).toEqual([])
    await page.keyboard.press('Escape')
    await page.getByTestId('ask-back').waitFor({ state: 'detached' })
    for (const name of [/My record|Mi registro/, /Away|Ausencia/, /Options|Opciones/]) {
      await page.getByRole('button', { name }).first().click()
      await page.waitForTimeout(400)
      expect(await findings(page)).toEqual([])
    }
    await page.getByRole('button', { name: /Away|Ausencia/ }).click()
    await page.getByLabel(/First morning|Primera mañana/).fill('2026-08-03')
    await page.getByLabel(/Last morning|Última mañana/).fill('2026-08-12')
    await page.getByRole('button', { name: /Tell my network|Avisar a mi red/ }).click()
    const takeBack = page.getByRole('button', { name: /I will read after all|Sí leeré, al final/ })
    await takeBack.waitFor()
    expect(await findings(page)).toEqual([])
    await takeBack.click()
    await takeBack.waitFor({ state: 'detached' })
    expect(await findings(page)).toEqual([])
    await close()
  })

  it('a morning is reported with the keyboard alone', async () => {
    const { page, close } = await watch(browser, desk.url, { ...desktop, colorScheme })
    await openMy(page, desk.url, code)
    await page.getByRole('radio', { name: /Nothing/ }).focus()
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Tab')
    await page.keyboard.type('017')
    expect(await page.getByTestId('typed').textContent()).toMatch(/0\s*\.\s*17/)
    await page.keyboard.press('Backspace')
    expect(await page.getByTestId('typed').textContent()).toMatch(/0\s*\.\s*01/)
    await close()
  })
})
