/** The demo network on the desk: cold start to the first answer and the first painted screen, and a morning judged. */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { chromium } from 'playwright-core'
import { commandPath } from '../ours/runCommand.ts'
import { type OpenedDesk, openDesk } from './openDesk.ts'
import { runMeasured } from './runMeasured.ts'
import { type SpeedLine, skipped } from './speedLine.ts'

const morningsTimed = 7

export async function deskSpeed(workFolder: string): Promise<SpeedLine[]> {
  const ledger = join(workFolder, 'demo.db')
  const made = await runMeasured(process.execPath, [commandPath, 'demo', '--db', ledger, '--no-serve'])
  if (made.failure !== null) return [skipped('the demo and the desk', made.failure)]
  const lines: SpeedLine[] = [{ what: 'making the demo network', figure: `${made.seconds.toFixed(1)} s`, aim: '' }]
  const words = ['serve', '--db', ledger, '--no-open']
  const measures = [firstScreen, firstAnswer, morning]
  for (const measure of measures) {
    const what = measure === firstScreen ? 'cold start to first screen' : 'the desk'
    try {
      const desk = await openDesk(words)
      try {
        lines.push(await measure(desk))
      } finally {
        await desk.close()
      }
    } catch (error) {
      lines.push(skipped(what, error instanceof Error ? error.message.split('\n')[0]! : String(error)))
    }
  }
  return lines
}

interface Review {
  previousDay: string | null
}

async function review(desk: OpenedDesk, day: string): Promise<Review> {
  const answer = await fetch(`${desk.url}/api/days/${day}`)
  if (!answer.ok) throw new Error(`/api/days/${day} answered ${answer.status}`)
  return (await answer.json()) as Review
}

async function firstAnswer(desk: OpenedDesk): Promise<SpeedLine> {
  await review(desk, 'latest')
  return {
    what: 'cold start to the first review of the day',
    figure: `${Math.round(performance.now() - desk.startedAtMs)} ms`,
    aim: '',
  }
}

/** Days before the latest, one after another, so that none has been judged yet and the model has been learned. */
async function morning(desk: OpenedDesk): Promise<SpeedLine> {
  let day = (await review(desk, 'latest')).previousDay
  const times: number[] = []
  while (day !== null && times.length < morningsTimed) {
    const started = performance.now()
    const answer: Review = await review(desk, day)
    times.push(performance.now() - started)
    day = answer.previousDay
  }
  times.sort((a, b) => a - b)
  return {
    what: `a morning of the demo network judged and reviewed (median of ${times.length})`,
    figure: `${Math.round(times[times.length >> 1]!)} ms`,
    aim: '300 ms',
  }
}

async function firstScreen(desk: OpenedDesk): Promise<SpeedLine> {
  const what = 'cold start to the first painted screen'
  const executablePath = process.env.CHROMIUM_PATH ?? '/usr/bin/chromium'
  if (!existsSync(executablePath)) return skipped(what, 'no Chromium here (set CHROMIUM_PATH)')
  const deskReadyMs = performance.now() - desk.startedAtMs
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu', '--no-first-run'] })
  try {
    const page = await browser.newPage()
    const wentMs = performance.now()
    await page.goto(desk.url, { waitUntil: 'commit' })
    const paintMs = await page.evaluate(firstPaintMs)
    await page.getByRole('table').or(page.getByRole('list')).first().waitFor({ timeout: 20_000 })
    const shownMs = performance.now() - wentMs
    return {
      what: `${what}, then with the day's rows (the browser's own start left out)`,
      figure: `${Math.round(deskReadyMs + paintMs)} ms, ${Math.round(deskReadyMs + shownMs)} ms`,
      aim: '',
    }
  } finally {
    await browser.close()
  }
}

/** Runs in the page. */
function firstPaintMs(): Promise<number> {
  return new Promise((resolve) => {
    new PerformanceObserver((list) => {
      const paint = list.getEntriesByName('first-contentful-paint')[0]
      if (paint !== undefined) resolve(paint.startTime)
    }).observe({ type: 'paint', buffered: true })
  })
}
