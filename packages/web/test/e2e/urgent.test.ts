/** Urgent reports on open desks: live within two seconds, worked by keyboard, on a phone, through a broken line. */
import type { UrgentNow } from '@gaugewright/contract'
import type { Browser, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { breakableLine } from './breakableLine.ts'
import { fileHail, placeIn } from './fileUrgent.ts'
import { desktop, openBrowser, phone, type Watched, watch } from './openBrowser.ts'
import { type RunningDesk, startDesk } from './startDesk.ts'

let desk: RunningDesk
let browser: Browser
const open: Watched[] = []

beforeAll(async () => {
  desk = await startDesk(['--years', '1', '--gauges', '60'])
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
  await desk?.stop()
})
afterEach(async () => {
  for (const { foreign, troubles, close } of open.splice(0)) {
    await close()
    expect(foreign).toEqual([])
    expect(troubles).toEqual([])
  }
})

async function openAt(path: string, options = desktop as Parameters<typeof watch>[2]): Promise<Page> {
  const watched = await watch(browser, desk.url, options)
  open.push(watched)
  await watched.page.goto(`${desk.url}${path}`)
  return watched.page
}
const openUrgent = async (path = '/urgent', options = desktop as Parameters<typeof watch>[2]): Promise<Page> => {
  const page = await openAt(path, options)
  await page
    .getByText('Live', { exact: true })
    .or(page.getByText('En directo', { exact: true }))
    .waitFor()
  return page
}
const now = async () => (await (await fetch(`${desk.url}/api/urgent`)).json()) as UrgentNow
const stateOf = async (id: string) => (await now()).items.find(({ report }) => report.id === id)?.state
const soon = <T>(look: () => T) => expect.poll(look, { timeout: 10_000 })
const entry = (page: Page, id: string) => page.locator(`[data-testid=urgent-list] [data-report="${id}"]`)
const panelState = (page: Page) => page.getByTestId('urgent-panel').getAttribute('data-state')

describe('a filed report', () => {
  it('is on two open desks within two seconds, on the list of one and above Today on the other', async () => {
    const list = await openUrgent()
    const today = await openAt('/')
    await today.waitForSelector('[data-testid=evidence][data-reading]', { state: 'attached' })
    // Its line is open once the list has come.
    await soon(() =>
      today.evaluate(() => performance.getEntriesByName(`${location.origin}/api/urgent`).length),
    ).toBeGreaterThan(0)
    await today.waitForTimeout(300)
    const { id, filedAtMs } = await fileHail(desk.url, 55)
    const [onList, onToday] = await Promise.all([
      entry(list, id)
        .waitFor()
        .then(() => Date.now() - filedAtMs),
      today
        .getByTestId('urgent-strip')
        .waitFor()
        .then(() => Date.now() - filedAtMs),
    ])
    expect(onList).toBeLessThan(2000)
    expect(onToday).toBeLessThan(2000)
    expect(await list.title()).toMatch(/^\(1\) Urgent/)
    expect(await today.title()).toMatch(/^\(1\) /)
    expect(await today.getByTestId('urgent-strip').textContent()).toContain('Hail 2.17 in, Upper meadow')
    await today.getByRole('link', { name: 'Open Urgent' }).click()
    await today.getByTestId('urgent-panel').waitFor()
    expect(new URL(today.url()).pathname).toBe(`/urgent/${id}`)
  })

  it('what one desk does shows on the other', async () => {
    const one = await openUrgent()
    const other = await openUrgent()
    const { id } = await fileHail(desk.url, 30)
    await entry(one, id).getByRole('button').click()
    await one.getByTestId('urgent-panel').getByRole('button', { name: 'Seen' }).click()
    await soon(() => entry(other, id).getAttribute('data-state')).toBe('seen')
  })

  it('the time from stone to desk, to the first look and to passing on is shown', async () => {
    const page = await openUrgent()
    const { id } = await fileHail(desk.url, 30, {}, 125)
    await entry(page, id).getByRole('button').click()
    const times = page.getByTestId('urgent-times')
    await soon(() => times.textContent()).toMatch(/this desk: 2 min \d+ s/)
    expect(await times.textContent()).toContain('first look: not yet')
    await page.keyboard.press('s')
    await soon(() => times.textContent()).toMatch(/first look: 2 min \d+ s/)
    expect(await page.getByTestId('medians').textContent()).toMatch(/to the desk/)
  })
})

describe('by keyboard alone', () => {
  it('seen, passed on by copying, closed with a reason, and each taken back', async () => {
    const page = await openUrgent('/urgent', { ...desktop, permissions: ['clipboard-read', 'clipboard-write'] })
    const { id } = await fileHail(desk.url, 44.45)
    await entry(page, id).waitFor()
    for (let step = 0; step < 20; step++) {
      if ((await page.getByTestId('urgent-panel').getAttribute('data-report')) === id) break
      await page.keyboard.press('j')
      await page.waitForTimeout(50)
    }
    expect(await page.getByTestId('urgent-panel').getAttribute('data-report')).toBe(id)
    await page.keyboard.press('s')
    await soon(() => panelState(page)).toBe('seen')
    await page.keyboard.press('p')
    await page.getByTestId('coded-text').waitFor()
    expect(await page.getByTestId('coded-text').textContent()).toMatch(/HAIL[\s\S]*M1\.75 INCH/)
    expect((await now()).items.find(({ report }) => report.id === id)?.passedOn).toEqual([])
    await page.getByRole('button', { name: /Copy, and note/ }).press('Enter')
    await soon(() => panelState(page)).toBe('passed on')
    expect(await page.evaluate(() => navigator.clipboard.readText())).toContain('PRELIMINARY LOCAL STORM REPORT')
    await page.keyboard.press('c')
    await page.getByRole('dialog').waitFor()
    await page.keyboard.press('Enter')
    await soon(() => panelState(page)).toBe('closed')
    for (const state of ['passed on', 'seen', 'new']) {
      await page.keyboard.press('u')
      await soon(() => panelState(page)).toBe(state)
    }
    expect(await stateOf(id)).toBe('new')
  })
})

describe('the line', () => {
  it('says when it is lost, and what came meanwhile is there once it is back', async () => {
    const line = await breakableLine(desk.url)
    const watched = await watch(browser, line.url, desktop)
    const { page } = watched
    await page.goto(`${line.url}/urgent`)
    await page.getByText('Live', { exact: true }).waitFor()
    line.cut()
    await page.getByText('Line lost, trying again').waitFor()
    const missed = await fileHail(desk.url, 33)
    expect(await entry(page, missed.id).count()).toBe(0)
    line.mend()
    await entry(page, missed.id).waitFor()
    await page.getByText('Live', { exact: true }).waitFor()
    // And it goes on from there.
    const next = await fileHail(desk.url, 34)
    await entry(page, next.id).waitFor()
    expect(watched.foreign).toEqual([])
    await watched.close()
    line.close()
  })
})

describe('the screen', () => {
  it('sound is off until it is switched on by a click, is kept, and is heard by what the browser plays', async () => {
    const page = await openUrgent()
    expect(await page.getByRole('radio', { name: 'Off', exact: true }).isChecked()).toBe(true)
    await page.evaluate(() => {
      const plays = { count: 0 }
      Object.assign(window, { plays })
      const start = OscillatorNode.prototype.start
      OscillatorNode.prototype.start = function (...when) {
        plays.count++
        start.apply(this, when)
      }
    })
    const played = () => page.evaluate(() => (window as unknown as { plays: { count: number } }).plays.count)
    const quiet = await fileHail(desk.url, 20)
    await entry(page, quiet.id).waitFor()
    expect(await played()).toBe(0)
    await page.getByRole('radio', { name: 'On', exact: true }).check({ force: true })
    await page.getByRole('button', { name: 'Hear it' }).waitFor()
    const loud = await fileHail(desk.url, 21)
    await entry(page, loud.id).waitFor()
    await soon(played).toBe(3)
    expect(await page.evaluate(() => localStorage.getItem('gaugewright.urgentSound'))).toBe('on')
  })

  it('storms are drawn with their track, and the report says how the storm moves', async () => {
    const place = await placeIn(desk.url)
    for (const [index, minutesAgo] of [32, 24, 16, 8].entries()) {
      const lonDeg = place.lonDeg + 0.09 * index
      const where = { kind: 'place' as const, latDeg: place.latDeg, lonDeg, name: `Meadow ${index}` }
      await fileHail(desk.url, 40 + index, { where, by: `Witness ${index}` }, 60 * minutesAgo)
    }
    const page = await openUrgent()
    await page.locator('[data-storm]').first().waitFor({ state: 'attached' })
    const { storms, items } = await now()
    expect(storms[0]?.reportIds.length).toBeGreaterThanOrEqual(4)
    const member = items.find(({ report }) => report.seen.kind === 'hail' && report.seen.largest.diameterMm === 42)
    await entry(page, member?.report.id ?? '')
      .getByRole('button')
      .click()
    expect(await page.getByTestId('urgent-panel').textContent()).toMatch(/reports near speak for it/)
  })

  it('on a phone: the list, then one report; nothing wider than the screen, in Spanish and in the dark', async () => {
    const page = await openUrgent('/urgent', { ...phone, colorScheme: 'dark' })
    await page.evaluate(() => localStorage.setItem('gaugewright.language', 'es'))
    await page.reload()
    await page.getByText('En directo', { exact: true }).waitFor()
    const isWide = () => page.evaluate(() => document.documentElement.scrollWidth > innerWidth)
    expect(await isWide()).toBe(false)
    expect(await page.getByTestId('urgent-panel').isVisible()).toBe(false)
    await page.getByTestId('urgent-list').getByRole('button').first().click()
    await page.getByTestId('urgent-panel').waitFor()
    expect(await isWide()).toBe(false)
    expect(await page.getByText('Primero la seguridad.').isVisible()).toBe(true)
    await page.getByRole('button', { name: 'Transmitir…' }).click()
    await page.getByTestId('coded-text').waitFor()
    expect(await isWide()).toBe(false)
    await page.keyboard.press('Escape')
    await page.getByRole('button', { name: 'Todos los avisos' }).click()
    await page.getByTestId('urgent-list').waitFor()
  })

  it('safety stands above the list, and that official warnings are not replaced', async () => {
    const page = await openUrgent()
    const text = await page.locator('main').textContent()
    expect(text).toContain('Stay inside until 30 minutes after the last thunder')
    expect(text).toContain('never replaces official warnings')
  })
})
