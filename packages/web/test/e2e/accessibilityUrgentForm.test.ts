/** No serious or critical finding of axe on the observer's urgent form: every step, light and dark, 360 px and at a desk. */
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { desktop, openBrowser, phone } from './openBrowser.ts'
import { seriousFindings } from './seriousFindings.ts'
import { type UrgentDesk, urgentDesk } from './urgentDesk.ts'

let desk: UrgentDesk
let browser: Browser

beforeAll(async () => {
  desk = await urgentDesk('mm')
  await desk.start()
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
  await desk?.remove()
})

/** Findings, parts that stick out, and targets below 44 CSS pixels. */
async function faults(page: Page): Promise<string[]> {
  const found = await seriousFindings(page)
  const seen = await page.evaluate(() => {
    const told: string[] = []
    if (document.documentElement.scrollWidth > innerWidth)
      told.push(`too wide: ${document.documentElement.scrollWidth}`)
    for (const one of document.querySelectorAll(
      'button, summary, a[href], select, textarea, label:has(input), input:not(label input)',
    )) {
      const box = one.getBoundingClientRect()
      if (box.width === 0 || (one as HTMLInputElement).type === 'range') continue
      if (one.tagName === 'LABEL' && one.querySelector('span') === null) continue
      if (box.height < 44) told.push(`small: ${one.outerHTML.slice(0, 100)} ${box.height}`)
    }
    return told
  })
  return [...found, ...seen]
}

for (const colorScheme of ['light', 'dark'] as const) {
  for (const [name, size] of [
    ['a phone', phone],
    ['a desk', desktop],
  ] as const) {
    describe(`the urgent form, ${colorScheme}, on ${name}`, () => {
      it('has no finding in any step', async () => {
        const context = await browser.newContext({ ...size, colorScheme, locale: 'es-ES' })
        const page = await context.newPage()
        for (const kind of ['', '/hail', '/rain', '/snow', '/flooding', '/wind']) {
          await page.goto(`${desk.url}/my/?gauge=AB5#urgent${kind}`)
          await page.reload()
          await page.getByRole('heading', { level: 2 }).first().waitFor()
          expect(await faults(page), `step ${kind}`).toEqual([])
        }
        await page.getByLabel('Su nombre').fill('C. Observadora')
        await page.getByRole('radio', { name: 'en otro lugar' }).check()
        await page.getByRole('button', { name: 'árboles' }).click()
        await page.getByRole('alert').waitFor()
        expect(await faults(page), 'what is missing').toEqual([])
        await page.goto(`${desk.url}/my/?gauge=AB4#urgent/hail`)
        await page.reload()
        await page.getByRole('button', { name: /^canica/ }).click()
        await page.getByRole('radio', { name: 'No', exact: true }).first().check()
        await page
          .getByRole('group', { name: /30 minutos/ })
          .getByRole('radio', { name: 'Sí' })
          .check()
        expect(await faults(page), 'more').toEqual([])
        const largest = page.getByRole('group', { name: 'Piedra mayor' })
        await largest.getByRole('radio', { name: 'en esta pantalla' }).check()
        expect(await faults(page), 'the card').toEqual([])
        await largest.getByRole('button', { name: 'Coincide' }).click()
        expect(await faults(page), 'the circle').toEqual([])
        await context.close()
      })
    })
  }
}
