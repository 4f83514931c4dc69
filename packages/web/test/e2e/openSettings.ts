import type { Browser, BrowserContextOptions } from 'playwright-core'
import { type Watched, watch } from './openBrowser.ts'

/** The Settings screen with what the rule would do drawn on it; the desk may have to judge past mornings first. */
export async function openSettings(browser: Browser, url: string, options: BrowserContextOptions): Promise<Watched> {
  const watched = await watch(browser, url, options)
  await watched.page.goto(`${url}/settings`)
  await watched.page.getByTestId('rule-figures').waitFor({ timeout: 110_000 })
  return watched
}
