import type { Browser, BrowserContextOptions } from 'playwright-core'
import { type Watched, watch } from './openBrowser.ts'

/** The Gauges screen with its list; the desk may have to look through the record first. */
export async function openGauges(
  browser: Browser,
  url: string,
  options: BrowserContextOptions,
  code?: string,
): Promise<Watched> {
  const watched = await watch(browser, url, options)
  await watched.page.goto(code === undefined ? `${url}/gauges` : `${url}/gauges/${code}`)
  const shown = code === undefined ? 'gauge-list' : 'gauge'
  await watched.page.getByTestId(shown).waitFor({ timeout: 110_000 })
  return watched
}
