/** Chromium for the browser tests, and pages that remember what went wrong on them. */
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core'

export const browserOptions = {
  executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium',
  args: [
    '--no-sandbox',
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
  ],
}

export function openBrowser(): Promise<Browser> {
  return chromium.launch(browserOptions)
}

export type Watched = { page: Page; troubles: string[]; foreign: string[]; close: () => Promise<void> }

export const desktop = { viewport: { width: 1440, height: 900 } } satisfies BrowserContextOptions
export const phone = { viewport: { width: 360, height: 740 }, hasTouch: true } satisfies BrowserContextOptions

/** An empty page. `troubles` gathers console errors, `foreign` requests to other hosts. */
export async function watch(browser: Browser, url: string, options: BrowserContextOptions): Promise<Watched> {
  const context = await browser.newContext({ locale: 'en-US', ...options })
  const page = await context.newPage()
  const troubles: string[] = []
  const foreign: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error') troubles.push(message.text())
  })
  page.on('pageerror', (error) => troubles.push(error.message))
  page.on('request', (request) => {
    if (new URL(request.url()).origin !== new URL(url).origin && !request.url().startsWith('data:'))
      foreign.push(request.url())
  })
  return { page, troubles, foreign, close: () => context.close() }
}

/** A page at the desk with its evidence drawn. */
export async function openPage(browser: Browser, url: string, options: BrowserContextOptions): Promise<Watched> {
  const watched = await watch(browser, url, options)
  await watched.page.goto(url)
  await watched.page.waitForSelector('[data-testid=evidence][data-reading]', { state: 'attached' })
  return watched
}

export const toDecide = async (page: Page) => Number(await page.getByTestId('to-decide').textContent())

/** The name of the chosen gauge, as the evidence shows it. */
export const chosenReading = (page: Page) => page.getByTestId('evidence').getAttribute('data-reading')

/** Wait until the evidence shows another reading than `before`. */
export async function otherReading(page: Page, before: string | null): Promise<string> {
  await page.waitForFunction(
    (old) => {
      const now = document.querySelector('[data-testid=evidence]')?.getAttribute('data-reading')
      return now !== null && now !== undefined && now !== old
    },
    before,
    { timeout: 10_000 },
  )
  return (await chosenReading(page))!
}
