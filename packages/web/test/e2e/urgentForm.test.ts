/** The observer's urgent form in a real browser, on a phone's screen: two touches, offline, photos, the ruler, Spanish. */
import type { PhotosOfReport, UrgentNow } from '@gaugewright/contract'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { jpegWithExif } from './jpegWithExif.ts'
import { openBrowser, phone } from './openBrowser.ts'
import { type UrgentDesk, urgentDesk } from './urgentDesk.ts'

let desk: UrgentDesk
let browser: Browser

beforeAll(async () => {
  desk = await urgentDesk('in')
  await desk.start()
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
  await desk?.remove()
})

const ask = async <T>(path: string): Promise<T> => (await (await fetch(`${desk.url}${path}`)).json()) as T
const filed = async () => (await ask<UrgentNow>('/api/urgent')).items

async function openForm(context: BrowserContext, gauge = 'AB3'): Promise<Page> {
  const page = await context.newPage()
  await page.goto(`${desk.url}/my/?gauge=${gauge}#urgent`)
  await page.getByRole('heading', { name: 'What do you see?' }).waitFor()
  return page
}
const newContext = (options: object = {}) => browser.newContext({ ...phone, locale: 'en-US', ...options })
const state = (page: Page) => page.getByTestId('report').first().getAttribute('data-state')

it('two touches make a report that the desk has', async () => {
  const context = await newContext()
  const page = await openForm(context)
  const began = Date.now()
  await page.getByRole('button', { name: /^Hail/ }).click()
  await page.getByRole('button', { name: 'golf ball 1.75 in' }).click()
  await expect.poll(() => state(page)).toBe('received')
  const items = await filed()
  expect(items).toHaveLength(1)
  expect(items[0]?.report).toMatchObject({
    where: { kind: 'gauge' },
    by: 'A. Observer',
    seen: { kind: 'hail', largest: { by: 'object', object: 'golf ball', diameterMm: 44.45 } },
  })
  expect(items[0]?.gauge?.code).toBe('AB3')
  expect(Date.parse(items[0]!.receivedAtUtc) - began).toBeLessThan(5000)
  await context.close()
})

it('safety advice stands before anything is asked, and measuring is not asked for while it may be dangerous', async () => {
  const context = await newContext()
  const page = await openForm(context)
  const safety = page.getByRole('region', { name: 'First, be safe' })
  for (const words of ['Stay inside', '30 minutes after the last thunder', 'Never walk or drive into water'])
    expect(await safety.textContent()).toContain(words)
  expect((await safety.boundingBox())!.y).toBeLessThan(
    (await page.getByRole('button', { name: /^Hail/ }).boundingBox())!.y,
  )
  await page.getByRole('button', { name: /^Hail/ }).click()
  await page.getByRole('button', { name: /^quarter/ }).click()
  await page.getByText('More, when it is safe').waitFor()
  const measuring = page.getByRole('radio', { name: 'with a ruler' })
  const going = page.getByRole('group', { name: 'Is it still falling?' })
  await going.getByRole('radio', { name: 'Yes' }).click()
  await page.getByText('Then stay inside.').waitFor()
  expect(await measuring.count()).toBe(0)
  await going.getByRole('radio', { name: 'No', exact: true }).click()
  expect(await measuring.count()).toBe(0)
  const thunder = page.getByRole('group', { name: /30 minutes passed/ })
  await thunder.getByRole('radio', { name: 'No', exact: true }).click()
  expect(await measuring.count()).toBe(0)
  await thunder.getByRole('radio', { name: 'Yes' }).click()
  expect(await measuring.count()).toBe(3)
  await context.close()
})

it('a hail report filed without a signal survives the closed page and arrives once, with what was added to it', async () => {
  const before = (await filed()).length
  const context = await newContext()
  const first = await openForm(context)
  // The worker has to have the page before the signal goes.
  await first.waitForFunction(() => navigator.serviceWorker.controller !== null, undefined, { timeout: 30_000 })
  await desk.stop()
  await first.getByRole('button', { name: /^Hail/ }).click()
  await first.getByRole('button', { name: /^baseball/ }).click()
  await first.getByText('On this phone, not sent yet').waitFor()
  await first.getByLabel('Remark').fill('roof tiles broken')
  await first.getByRole('button', { name: 'Send this too' }).click()
  await first.getByText('Added.').waitFor()
  await first.close()

  // A new page, still without a signal: the page opens, and the report is there.
  const second = await context.newPage()
  await second.goto(`${desk.url}/my/?gauge=AB3#urgent`)
  await second.getByText('Reports from this phone').waitFor()
  expect(await state(second)).toBe('waiting')

  await desk.start()
  // Two pages that send at the same time.
  const third = await context.newPage()
  await third.goto(`${desk.url}/my/?gauge=AB3#urgent`)
  await Promise.all([second.bringToFront(), third.bringToFront()])
  await expect.poll(() => state(third), { timeout: 20_000 }).toBe('received')
  const items = await filed()
  expect(items).toHaveLength(before + 1)
  const item = items.find(({ report }) => report.remark === 'roof tiles broken')
  expect(item?.report.seen).toMatchObject({ largest: { object: 'baseball' } })
  await context.close()
})

it('a photo with a position goes in on the phone, and neither position nor device comes out anywhere', async () => {
  const context = await newContext()
  const page = await openForm(context)
  await page.getByRole('button', { name: /^Hail/ }).click()
  await page.getByRole('button', { name: /^walnut/ }).click()
  await expect.poll(() => state(page)).toBe('received')
  const picture = await jpegWithExif(page)
  for (const told of ['Exif', 'Inventedphone', 'SN-4711']) expect(picture.toString('latin1')).toContain(told)
  const sent = page.waitForRequest((request) => request.url().endsWith('/api/photos'))
  await page.getByLabel('Add a photo').setInputFiles({ name: 'IMG_2026.jpg', mimeType: 'image/jpeg', buffer: picture })
  const { imageBase64, reportId } = (await sent).postDataJSON() as { imageBase64: string; reportId: string }
  // What leaves the phone …
  const leaving = Buffer.from(imageBase64, 'base64').toString('latin1')
  expect(leaving.length).toBeGreaterThan(500)
  for (const told of ['Exif', 'Inventedphone', 'SN-4711', 'IMG_2026']) expect(leaving).not.toContain(told)
  await page.getByText('1 of 1 photos received').waitFor()
  // … and what the desk serves.
  const { photos } = await ask<PhotosOfReport>(`/api/urgent/${reportId}/photos`)
  expect(photos).toHaveLength(1)
  // The desk's people see it on the report.
  await expect
    .poll(async () => (await filed()).find(({ report }) => report.photoIds.length > 0)?.report.photoIds)
    .toEqual([photos[0]!.sha256])
  const served = await fetch(`${desk.url}/api/photos/${photos[0]!.sha256}`)
  expect(served.headers.get('content-type')).toBe('image/jpeg')
  const kept = Buffer.from(await served.arrayBuffer()).toString('latin1')
  for (const told of ['Exif', 'Inventedphone', 'SN-4711']) expect(kept).not.toContain(told)
  await context.close()
})

it('the ruler on the screen measures in true millimetres once a card was fitted, at the pixels the phone has', async () => {
  // An invented phone: ratio 3, 458 pixels to the inch: 152.67 CSS pixels to the inch, 6.0105 to the millimetre.
  const cssPxPerMm = 458 / 3 / 25.4
  const context = await newContext({ deviceScaleFactor: 3, viewport: { width: 390, height: 844 } })
  const page = await openForm(context)
  await page.getByRole('button', { name: /^Hail/ }).click()
  await page.getByRole('button', { name: /^golf ball/ }).click()
  await page
    .getByRole('group', { name: 'Is it still falling?' })
    .getByRole('radio', { name: 'No', exact: true })
    .click()
  await page
    .getByRole('group', { name: /30 minutes passed/ })
    .getByRole('radio', { name: 'Yes' })
    .click()
  const largest = page.getByRole('group', { name: 'Largest stone' })
  await largest.getByRole('radio', { name: 'on this screen' }).click()
  // Fit the drawn edge to a card of 53.98 mm on that glass.
  const slider = largest.getByRole('slider', { name: 'Width of the card on the screen' })
  await slider.fill(String(Math.round(2 * 53.98 * cssPxPerMm) / 2))
  const drawn = (await page.getByTestId('card').locator('path').boundingBox())!.width
  expect(drawn / cssPxPerMm).toBeCloseTo(53.98, 0)
  await largest.getByRole('button', { name: 'It fits' }).click()
  // A stone of 31 mm on that glass is 186.3 CSS pixels wide.
  await largest.getByRole('slider', { name: 'Size of the circle' }).fill('31')
  const circle = (await page.getByTestId('stone').locator('circle').boundingBox())!.width
  expect((circle - 2) / cssPxPerMm).toBeCloseTo(31, 0)
  await largest.getByRole('button', { name: /^Take/ }).click()
  await page.getByRole('button', { name: 'Send this too' }).click()
  await expect
    .poll(async () => (await filed()).map(({ report }) => report.seen))
    .toContainEqual(
      expect.objectContaining({
        largest: expect.objectContaining({ by: 'phone ruler', diameterMm: expect.closeTo(31, 0) }),
      }),
    )
  // Remembered on the phone.
  await page.reload()
  await page
    .getByRole('group', { name: 'Is it still falling?' })
    .getByRole('radio', { name: 'No', exact: true })
    .click()
  await page
    .getByRole('group', { name: /30 minutes passed/ })
    .getByRole('radio', { name: 'Yes' })
    .click()
  await page.getByRole('group', { name: 'Largest stone' }).getByRole('radio', { name: 'on this screen' }).click()
  await page.getByRole('slider', { name: 'Size of the circle' }).waitFor()
  await context.close()
})

it('works out the rate while it is typed, and files rain by keyboard alone', async () => {
  const context = await newContext({ viewport: { width: 1440, height: 900 }, hasTouch: false })
  const page = await openForm(context)
  await page.getByRole('button', { name: /^Torrential rain/ }).focus()
  await page.keyboard.press('Enter')
  await page.getByLabel('Amount, in').focus()
  await page.keyboard.type('0.80')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Space')
  await page.keyboard.press('ArrowRight')
  expect(await page.getByTestId('rate').textContent()).toBe('That is 3.20 in/h, violent rain')
  await page.getByLabel('Amount, in').focus()
  await page.keyboard.press('Enter')
  await expect.poll(() => state(page)).toBe('received')
  expect((await filed()).map(({ report }) => report.seen)).toContainEqual(
    expect.objectContaining({ kind: 'rain', amountUm: 20_320, minutes: 15 }),
  )
  await context.close()
})

it('speaks Spanish to a Spanish browser, and asks for a name where none is known', async () => {
  const context = await newContext({ locale: 'es-ES' })
  const page = await context.newPage()
  await page.goto(`${desk.url}/my/?gauge=AB5#urgent`)
  await page.getByRole('button', { name: /^Inundación/ }).click()
  await page.getByRole('button', { name: 'calle' }).click()
  expect(await page.getByRole('alert').textContent()).toBe(
    'Primero escriba su nombre, por si la mesa tiene que preguntar.',
  )
  await page.getByLabel('Su nombre').fill('C. Observadora')
  await page.getByRole('button', { name: 'calle' }).click()
  await page.getByText(/^✓ Recibido en la mesa/).waitFor()
  expect((await filed()).map(({ report }) => report.by)).toContain('C. Observadora')
  await page.getByRole('button', { name: 'English' }).click()
  await page.getByText(/^✓ Received by the desk/).waitFor()
  await context.close()
})
