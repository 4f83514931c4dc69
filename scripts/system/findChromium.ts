/** The browser of the end-to-end tests: CHROMIUM_PATH, or where systems usually keep one. */
import { existsSync } from 'node:fs'

export const usualPaths = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
]

/** @returns the path of a browser, or null. A CHROMIUM_PATH that leads nowhere is not passed over: it is a mistake to mend. */
export function findChromium(
  environment: { CHROMIUM_PATH?: string } = process.env,
  exists: (path: string) => boolean = existsSync,
): string | null {
  const named = environment.CHROMIUM_PATH
  if (named !== undefined && named !== '') return exists(named) ? named : null
  return usualPaths.find(exists) ?? null
}
