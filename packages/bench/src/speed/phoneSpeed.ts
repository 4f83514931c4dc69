/**
 * The observer's page on a slow phone for the first time: nothing kept, processor four times slower, a mobile network. What
 * travels until it can be used is counted as it comes over the wire.
 */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { type Browser, type CDPSession, chromium, type Page } from 'playwright-core'
import { z } from 'zod'
import { commandPath } from '../ours/runCommand.ts'
import { openDesk } from './openDesk.ts'
import { runMeasured } from './runMeasured.ts'
import { type SpeedLine, skipped } from './speedLine.ts'
import { median } from './timings.ts'

const rounds = 5
const processorSlowdown = 4
/** Between a slow and a usual mobile network. */
const network = { latencyMs: 150, downKbitPerS: 1638, upKbitPerS: 750 }
const what = "the observer's page, first time on a slow phone"
const reviewSchema = z.object({ roll: z.array(z.object({ code: z.string() })) })

export async function phoneSpeed(workFolder: string): Promise<SpeedLine[]> {
  const executablePath = process.env.CHROMIUM_PATH ?? '/usr/bin/chromium'
  if (!existsSync(executablePath)) return [skipped(what, 'no Chromium here (set CHROMIUM_PATH)')]
  const ledger = join(workFolder, 'phone.db')
  const made = await runMeasured(process.execPath, [commandPath, 'demo', '--db', ledger, '--years', '2', '--no-serve'])
  if (made.failure !== null) return [skipped(what, made.failure)]
  const desk = await openDesk(['serve', '--db', ledger, '--no-open'])
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu', '--no-first-run'] })
  try {
    // The desk is up and has learned its network, as on any day: its start is measured elsewhere.
    const { roll } = reviewSchema.parse(await (await fetch(`${desk.url}/api/days/latest`)).json())
    const { code } = roll[0]!
    const visits: Visit[] = []
    for (let round = 0; round < rounds; round++) visits.push(await visit(browser, `${desk.url}/my/?gauge=${code}`))
    return lines(visits)
  } finally {
    await browser.close()
    await desk.close()
  }
}

interface Visit {
  /** Until a tap on a digit shows in the amount. */
  interactiveMs: number
  /** What the page's main thread worked until then, as slow as it was made. */
  workedMs: number
  bytes: number
  requests: number
  /** Bytes of what is fetched behind the work after that, for the time without a signal. */
  laterBytes: number
}

async function visit(browser: Browser, url: string): Promise<Visit> {
  const context = await browser.newContext({ viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true })
  try {
    const page = await context.newPage()
    const session = await context.newCDPSession(page)
    await slowDown(session)
    let bytes = 0
    let requests = 0
    session.on('Network.loadingFinished', ({ encodedDataLength }) => {
      bytes += encodedDataLength
      requests++
    })
    const started = performance.now()
    await page.goto(url, { waitUntil: 'commit' })
    await typeDigit(page)
    const interactiveMs = performance.now() - started
    const first = { bytes, requests, workedMs: await workedMs(session) }
    await page.waitForLoadState('networkidle')
    return { interactiveMs, ...first, laterBytes: bytes - first.bytes }
  } finally {
    await context.close()
  }
}

async function slowDown(session: CDPSession): Promise<void> {
  await session.send('Network.enable')
  await session.send('Performance.enable')
  await session.send('Emulation.setCPUThrottlingRate', { rate: processorSlowdown })
  await session.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: network.latencyMs,
    downloadThroughput: (network.downKbitPerS * 1000) / 8,
    uploadThroughput: (network.upKbitPerS * 1000) / 8,
  })
}

async function typeDigit(page: Page): Promise<void> {
  await page.getByRole('radio', { name: 'Amount' }).check()
  await page.getByRole('button', { name: '4', exact: true }).click()
  await page.getByText(/4/).first().waitFor()
}

async function workedMs(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics')
  return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN)
}

function lines(visits: readonly Visit[]): SpeedLine[] {
  const of = (pick: (visit: Visit) => number): number[] => visits.map(pick)
  const kB = (bytes: readonly number[]): string => `${(median(bytes) / 1000).toFixed(0)} kB`
  const slow = `processor / ${processorSlowdown}, ${network.latencyMs} ms, ${network.downKbitPerS} kbit/s`
  const times = of(({ interactiveMs }) => interactiveMs)
  const range = `${Math.round(Math.min(...times))} to ${Math.round(Math.max(...times))}`
  return [
    {
      what: `${what}: loaded until it can be used`,
      figure: `${kB(of(({ bytes }) => bytes))} in ${median(of(({ requests }) => requests))} requests, ${kB(of(({ laterBytes }) => laterBytes))} behind it`,
      aim: 'under 200 kB',
    },
    {
      what: `${what} (${slow}): a tapped digit shows after`,
      figure: `${Math.round(median(times))} ms (${range}), main thread busy ${Math.round(median(of(({ workedMs: ms }) => ms)))} ms`,
      aim: 'under 2 s',
    },
  ]
}
