/** The observer's page of a gauge in Chromium. */
import type { DayReview, MyGauge } from '@gaugewright/contract'
import type { Page } from 'playwright-core'

export const pageOf = (url: string, code: string) => `${url}/my/?gauge=${code}`

/** Open the page and wait until its worker holds it for the time without a signal. */
export async function openMy(page: Page, url: string, code: string): Promise<void> {
  await page.goto(pageOf(url, code))
  await page.getByTestId('waiting').waitFor()
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready
  })
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
}

export async function typeAmount(page: Page, digits: string): Promise<void> {
  await page.getByRole('radio', { name: /Amount|Cantidad/ }).check()
  for (const digit of digits) await page.getByRole('button', { name: digit, exact: true }).click()
}

/** Gauges that have not reported on the demo's morning. */
export async function silentGauges(url: string): Promise<string[]> {
  const review = (await (await fetch(`${url}/api/days/latest`)).json()) as DayReview
  return review.roll.filter(({ answer }) => answer === 'silent').map(({ code }) => code)
}

/** What the ledger holds of a gauge for a day, as its own page is told. */
export async function readingsOn(url: string, code: string, day: string): Promise<MyGauge['readings']> {
  const answer = (await (await fetch(`${url}/api/my/gauges/${code}`)).json()) as MyGauge
  return answer.readings.filter(({ lastDay }) => lastDay === day)
}

export async function demoDay(url: string): Promise<string> {
  return ((await (await fetch(`${url}/api/days/latest`)).json()) as DayReview).day
}
