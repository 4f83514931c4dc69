/** A stranger offers, draws the yard, practises; the coordinator answers, agrees, gives a gauge and takes back: in a real browser. */
import { spawnSync } from 'node:child_process'
import type { Holding } from '@gaugewright/contract'
import type { Browser } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { jpegWithExif } from './jpegWithExif.ts'
import { desktop, openBrowser, phone, type Watched, watch } from './openBrowser.ts'
import { silentGauges } from './openMy.ts'
import { seriousFindings } from './seriousFindings.ts'
import { type RunningDesk, startDesk, startWords } from './startDesk.ts'

let desk: RunningDesk
let browser: Browser
let watched: Watched
beforeAll(async () => {
  desk = await startDesk()
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
  await desk?.stop()
})
afterEach(async () => {
  expect(watched.foreign).toEqual([])
  expect(watched.troubles).toEqual([])
  await watched.close()
})

const open = async (path: string, options: Parameters<typeof watch>[2]) => {
  watched = await watch(browser, desk.url, options)
  await watched.page.goto(`${desk.url}${path}`)
  return watched.page
}
const isTooWide = () => watched.page.evaluate(() => document.documentElement.scrollWidth > innerWidth)

describe('an offer', () => {
  it('comes by the public page on a phone, with the mark set by keys, and lands on an open People at once', async () => {
    const opened = spawnSync(process.execPath, [...startWords, 'offer', 'page', '--open', '--db', desk.ledger], {
      encoding: 'utf8',
    })
    expect(opened.status, opened.stderr).toBe(0)
    const people = await watch(browser, desk.url, desktop)
    await people.page.goto(`${desk.url}/people`)
    await people.page.getByTestId('offers').waitFor()
    const page = await open('/offer', { ...phone, colorScheme: 'dark' })
    await page.getByRole('button', { name: 'Send the offer' }).click()
    await page.getByRole('alert').filter({ hasText: 'Your name' }).waitFor()
    await page.getByLabel('Your name').fill('Zora Example')
    await page.getByLabel('Telephone').fill('555 0199')
    await page.getByLabel(/Where would/).fill('By the new weir')
    await page.getByRole('application').focus()
    for (let step = 0; step < 4; step++) await page.keyboard.press('ArrowLeft')
    await page.getByText(/Marked:/).waitFor()
    expect(await seriousFindings(page)).toEqual([])
    expect(await isTooWide()).toBe(false)
    await page.reload()
    expect(await page.getByLabel('Your name').inputValue()).toBe('Zora Example')
    await page.waitForTimeout(3200)
    await page.getByRole('button', { name: 'Send the offer' }).click()
    await page.getByText('Your offer has arrived').waitFor()
    await people.page.getByText('By the new weir').waitFor({ timeout: 5000 })
    await people.close()
  })

  it('is answered, agreed, given a gauge and taken back by keyboard', async () => {
    const page = await open('/people', { ...desktop, colorScheme: 'light' })
    const panel = page.getByTestId('candidate')
    await panel.waitFor()
    await page.keyboard.press('/')
    await page.keyboard.type('Zora')
    await page.keyboard.press('Enter')
    await page.keyboard.press('Escape')
    await page.getByRole('heading', { name: 'Zora Example' }).waitFor()
    await page.getByLabel('What was said').focus()
    await page.keyboard.type('Glad to help')
    await page.keyboard.press('Enter')
    await panel.and(page.locator('[data-state=answered]')).waitFor()
    await page.getByTestId('contacts').getByText('Glad to help').waitFor()
    await page.getByRole('heading', { name: 'Zora Example' }).click()
    await page.keyboard.press('n')
    await panel.and(page.locator('[data-state="site agreed"]')).waitFor()
    await page.keyboard.press('n')
    await page.getByLabel('Name of the gauge').waitFor()
    await page.getByRole('button', { name: 'Give', exact: true }).click()
    await panel.and(page.locator('[data-state="gauge in hand"]')).waitFor()
    expect(await seriousFindings(page)).toEqual([])
    await page.keyboard.press('u')
    await panel.and(page.locator('[data-state="site agreed"]')).waitFor()
    await page.keyboard.press('w')
    await page.getByText('No mail address is known').waitFor()
    expect(await page.getByRole('textbox', { name: 'Text' }).inputValue()).toContain('Zora Example')
    await page.keyboard.press('Escape')
  })
})

describe('a screen that fails', () => {
  it('says so, and the way to the others stays open', async () => {
    watched = await watch(browser, desk.url, { ...desktop, colorScheme: 'light' })
    const { page } = watched
    await page.route('**/api/people/desk', (route) => route.fulfill({ json: { network: { language: 'en' } } }))
    await page.goto(`${desk.url}/people`)
    await page.getByRole('alert').getByText('SCREEN_FAILED').waitFor()
    await page.getByRole('link', { name: 'Settings' }).click()
    await page.getByRole('heading', { name: 'Public page for offers' }).waitFor()
    await page.unroute('**/api/people/desk')
    // What the browser says of the failure is wanted here.
    watched.troubles.length = 0
  })
})

describe('observers', () => {
  it('are written to from the list of those to thank, in words that fit the occasion, where the desk knows them', async () => {
    const { occasions } = (await (await fetch(`${desk.url}/api/holding`)).json()) as Holding
    const { code, text } = occasions[0]!
    const person = { name: 'Wim Example', role: 'observer', mail: 'wim@home.example', gauges: [code] }
    const headers = { 'content-type': 'application/json' }
    expect((await fetch(`${desk.url}/api/people`, { method: 'POST', headers, body: JSON.stringify(person) })).ok).toBe(
      true,
    )
    const page = await open('/people', { ...desktop, colorScheme: 'dark' })
    await page.getByText(/^To thank/).click()
    const row = page.getByTestId('thanks').getByRole('listitem').filter({ hasText: text })
    await row.getByRole('button', { name: 'Write a letter' }).click()
    await expect.poll(() => page.getByRole('textbox', { name: 'Text' }).inputValue()).toContain(text)
    expect(await page.getByRole('textbox', { name: 'Text' }).inputValue()).toContain('Hello Wim Example')
    await page
      .getByText(/Mail is not set up|mail/i)
      .first()
      .waitFor()
    expect(await seriousFindings(page)).toEqual([])
    await page.keyboard.press('Escape')
    await page.getByTestId('thanks').waitFor()
  })

  it.each([
    ['a desk, light', { ...desktop, colorScheme: 'light' as const }],
    ['a phone, dark', { ...phone, colorScheme: 'dark' as const }],
  ])('who is going quiet, the roll, and the page of their rain: %s', async (_, options) => {
    const page = await open('/people', options)
    const quiet = page.getByTestId('quiet').getByRole('listitem')
    await quiet.first().waitFor()
    const name = (await quiet.first().getByRole('button').first().textContent())!
    const before = await quiet.count()
    expect(await seriousFindings(page)).toEqual([])
    await quiet.first().getByRole('button', { name: 'Not now' }).click()
    await expect.poll(() => quiet.count()).toBe(before - 1)
    await page.getByText('Lately answered').click()
    await page.getByRole('button', { name: 'Take back' }).first().click()
    await expect.poll(() => quiet.count()).toBe(before)
    await quiet
      .filter({ hasText: name.trim().split(' ').at(-1)! })
      .getByRole('button')
      .first()
      .click()
    await page.getByTestId('observer').getByText('Roll over the last year').waitFor()
    const href = (await page.getByTestId('observer').getByRole('link', { name: 'Open to print' }).getAttribute('href'))!
    const leaf = await fetch(`${desk.url}${href}`)
    expect(leaf.headers.get('content-security-policy')).toContain("default-src 'none'")
    expect(await leaf.text()).toContain('<svg')
    expect(await seriousFindings(page)).toEqual([])
    expect(await isTooWide()).toBe(false)
  })
})

describe('a site', () => {
  it.each([
    ['a desk, dark', { ...desktop, colorScheme: 'dark' as const }],
    ['a phone, light', { ...phone, colorScheme: 'light' as const }],
  ])(
    'is started, dragged, broken and mended, searched for the best spot, saved and taken back: %s',
    async (_, options) => {
      const due = (await (await fetch(`${desk.url}/api/sites/due`)).json()) as {
        sites: { code: string; due: string }[]
      }
      const code = due.sites.find((one) => one.due === 'never surveyed')!.code
      const page = await open(`/gauges/${code}/site`, options)
      await page.getByRole('button', { name: 'Start from a plain lot with a house' }).click()
      await page.getByTestId('exposure-class').waitFor()
      const before = await page.getByTestId('exposure-class').textContent()
      const gauge = page.locator('[data-grab=gauge]')
      const box = (await gauge.boundingBox())!
      await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
      await page.mouse.down()
      const house = (await page.locator('[data-grab^=obstacle]').first().boundingBox())!
      await page.mouse.move(house.x + house.width / 2, house.y + house.height + 12, { steps: 6 })
      await page.mouse.up()
      await expect.poll(() => page.getByTestId('exposure-class').textContent()).not.toBe(before)
      // A tree of 900 m: one clear line, and nothing is lost.
      await page.getByRole('button', { name: 'Tree', exact: true }).click()
      await page.getByRole('button', { name: 'Add with usual size' }).click()
      await page.getByLabel(/Height above ground/).fill('9000')
      await page.getByTestId('yard-faults').getByText(/Tree/).waitFor()
      expect(await seriousFindings(page)).toEqual([])
      await page.reload()
      await page.getByTestId('yard-faults').getByText(/Tree/).waitFor()
      await page.getByRole('button', { name: 'Tree', exact: true }).last().click()
      await page.getByRole('button', { name: 'Remove' }).click()
      await page.getByRole('radio', { name: 'Best spot' }).check({ force: true })
      await page.getByRole('button', { name: 'Find the best spot' }).click()
      const spots = page.getByTestId('best-spots').getByRole('listitem')
      await spots.first().waitFor()
      expect(await spots.count()).toBe(3)
      await spots.first().getByRole('button').click()
      await page
        .getByText(/class 2|class 1/)
        .first()
        .waitFor()
      expect(await seriousFindings(page)).toEqual([])
      expect(await isTooWide()).toBe(false)
      await page.getByRole('button', { name: 'Save the survey' }).click()
      await page.getByText('The survey is saved.').waitFor()
      await page.getByRole('button', { name: 'Take back' }).first().click()
      await page
        .getByText(/taken back/)
        .first()
        .waitFor()
    },
  )
})

describe('a photo at the site', () => {
  it.each([
    [
      'a desk, light, the photo upright',
      { ...desktop, colorScheme: 'light' as const },
      { gauge: 0, widthPx: 240, heightPx: 320 },
    ],
    [
      'a phone, dark, the photo larger than the screen',
      { ...phone, colorScheme: 'dark' as const },
      { gauge: 1, widthPx: 1200, heightPx: 1600 },
    ],
  ])('is measured, kept without its place, opened again and measured again: %s', async (_, options, size) => {
    const code = (await silentGauges(desk.url))[size.gauge]!
    const page = await open(`/gauges/${code}/site`, options)
    const middle = { xPx: size.widthPx / 2, yPx: size.heightPx / 2 }
    const diagonalPx = Math.hypot(size.widthPx, size.heightPx)
    const mark = async (name: string, xPx: number, yPx: number) => {
      await page.getByRole('radio', { name: new RegExp(`^${name}( on the ground)?( ✓)?$`) }).check({ force: true })
      const at = await page.getByRole('application', { name: /Photo to measure in/ }).evaluate(
        (svg: SVGSVGElement, [x, y]) => {
          svg.scrollIntoView({ block: 'center' })
          const { x: left, y: top } = new DOMPoint(x, y).matrixTransform(svg.getScreenCTM()!)
          return { left, top }
        },
        [xPx, yPx] as const,
      )
      await page.mouse.click(at.left, at.top)
    }
    const markAll = async () => {
      await mark('Top', middle.xPx, middle.yPx - diagonalPx / 4)
      await mark('Foot', middle.xPx, middle.yPx + diagonalPx / 13)
      await mark('Horizon', middle.xPx, middle.yPx)
      await page.getByLabel(/Height of the camera/).fill('1')
      const told = await page.getByTestId('photo-result').textContent()
      return Number(/[\d.]+/.exec(told!)![0])
    }
    await page.getByRole('radio', { name: 'From a photo' }).check({ force: true })
    const buffer = await jpegWithExif(page, { ...size, equivalentMm: 26 })
    await page.getByLabel('Take or choose a photo').setInputFiles({ name: 'yard.jpg', mimeType: 'image/jpeg', buffer })
    await page.getByText(/focal length: 26 mm/).waitFor()
    // CIPA DCG-001: the equivalent has the diagonal angle of view on 36 mm x 24 mm, so here f = 26 / 43.27 of the diagonal.
    const focalPx = (26 / Math.hypot(36, 24)) * diagonalPx
    const angleDeg = (Math.atan(diagonalPx / 4 / focalPx) * 180) / Math.PI
    expect(Math.abs((await markAll()) - angleDeg)).toBeLessThan(0.6)
    expect(await seriousFindings(page)).toEqual([])
    expect(await isTooWide()).toBe(false)
    await page.getByLabel(/Keep the photo with the survey/).check()
    await page.getByText('Photos that go with it: 1').waitFor()
    await page.getByRole('button', { name: 'Save the survey' }).click()
    const kept = page.getByRole('button', { name: 'Measure in photo 1' })
    await kept.waitFor()
    const source = (await kept.locator('img').getAttribute('src'))!
    const bytes = Buffer.from(await (await fetch(`${desk.url}${source}`)).arrayBuffer()).toString('latin1')
    expect(bytes).not.toContain('Exif')
    expect(bytes).not.toContain('Inventedphone')
    await page.reload()
    await kept.click()
    await page.getByText(/focal length: 26 mm/).waitFor()
    expect(Math.abs((await markAll()) - angleDeg)).toBeLessThan(0.6)
  })
})

describe('a sitting of drills', () => {
  it.each(['light', 'dark'] as const)(
    'is done on a phone, marked at once, resumed after a reload: %s',
    async (colorScheme) => {
      const page = await open('/people/drills/try?seed=11', { ...phone, colorScheme })
      await page.getByRole('button', { name: 'Begin' }).click()
      let looked = 0
      for (let at = 0; at < 18; at++) {
        if (at === 3) await page.reload()
        if (at === 3) await page.getByRole('heading', { level: 2 }).waitFor()
        while (await page.getByRole('button', { name: 'Pour away' }).count())
          await page.getByRole('button', { name: 'Pour away' }).click()
        const field = page.getByRole('textbox')
        if (await field.count()) {
          await field.fill('0.20')
          await page.getByRole('button', { name: 'Answer' }).click()
        } else await page.getByRole('heading', { level: 2 }).locator('xpath=..').getByRole('button').first().click()
        await page.getByTestId('drill-mark').waitFor()
        if (looked++ < 3) expect(await seriousFindings(page)).toEqual([])
        await page.locator('[data-next]').click()
      }
      await page.getByTestId('drill-result').waitFor()
      expect(await page.getByTestId('drill-result').textContent()).toContain('%')
      expect(await seriousFindings(page)).toEqual([])
      expect(await isTooWide()).toBe(false)
    },
  )
})
