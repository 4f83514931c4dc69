/** What a decision would do, asked of the desk for every doubt of the demo's morning; and the decision itself after it. */
import { join } from 'node:path'
import { commandPath } from '../ours/runCommand.ts'
import { type OpenedDesk, openDesk } from './openDesk.ts'
import { processorSeconds, runMeasured } from './runMeasured.ts'
import { type SpeedLine, skipped } from './speedLine.ts'
import { median } from './timings.ts'

/** The demo as it is made, and a larger network. */
const networks = [
  { gauges: 180, words: [] },
  { gauges: 500, words: ['--gauges', '500', '--years', '2'] },
] as const
const aim = '200 ms of processor'

export async function whatIfSpeed(workFolder: string): Promise<SpeedLine[]> {
  const lines: SpeedLine[] = []
  for (const { gauges, words } of networks) {
    const ledger = join(workFolder, `what-if-${gauges}.db`)
    const made = await runMeasured(process.execPath, [commandPath, 'demo', '--db', ledger, ...words, '--no-serve'])
    if (made.failure !== null) lines.push(skipped(`what-if, ${gauges} gauges`, made.failure))
    else lines.push(...(await measure(ledger, gauges)))
  }
  return lines
}

async function measure(ledger: string, gauges: number): Promise<SpeedLine[]> {
  const desk = await openDesk(['serve', '--db', ledger, '--no-open'])
  try {
    const { day, docket } = await get<Review>(desk, '/api/days/latest')
    await post(desk, '/api/what-if', { day, changes: [] })
    const asked: Spent[] = []
    const decided: Spent[] = []
    for (const { readingId } of docket) {
      const { reading, proposal } = await get<Evidence>(desk, `/api/days/${day}/evidence/${readingId}`)
      const { amountUm, isTrace } = reading
      const acts = [{ amountUm: null }, ...(proposal === null ? [] : [proposal]), { amountUm, isTrace }]
      for (const act of acts) {
        asked.push(await timed(desk, () => post(desk, '/api/what-if', { day, changes: [{ readingId, ...act }] })))
      }
      let answer: Review | null = null
      decided.push(
        await timed(desk, async () => {
          answer = await post<Review>(desk, '/api/decisions', { readingId, verdict: 'stands' })
        }),
      )
      const id = decisionOf(answer, readingId)
      decided.push(await timed(desk, () => post(desk, '/api/decisions/undo', { decisionId: id })))
    }
    const of = `${gauges} gauges`
    return [
      { what: `what-if of ${asked.length} decisions, ${of}`, figure: wordSpent(asked), aim },
      { what: `${decided.length} decisions and undos after it, ${of}`, figure: wordSpent(decided), aim: '' },
    ]
  } finally {
    await desk.close()
  }
}

interface Review {
  day: string
  docket: { readingId: string }[]
  roll: { readingId: string | null; decision: { id: string } | null }[]
}
interface Evidence {
  reading: { amountUm: number; isTrace: boolean }
  proposal: { amountUm: number; isTrace: boolean; firstDay: string; lastDay: string } | null
}
interface Spent {
  clockMs: number
  processorMs: number | null
}

function decisionOf(review: Review | null, readingId: string): string {
  const id = review?.roll.find((row) => row.readingId === readingId)?.decision?.id
  if (id === undefined) throw new Error(`the desk did not decide about ${readingId}`)
  return id
}

async function timed(desk: OpenedDesk, act: () => Promise<unknown>): Promise<Spent> {
  const before = processorSeconds(desk.child.pid)
  const started = performance.now()
  await act()
  const clockMs = performance.now() - started
  const after = processorSeconds(desk.child.pid)
  return { clockMs, processorMs: before === null || after === null ? null : (after - before) * 1000 }
}

function wordSpent(spent: readonly Spent[]): string {
  const clock = spent.map(({ clockMs }) => clockMs)
  const processor = spent.flatMap(({ processorMs: ms }) => (ms === null ? [] : [ms]))
  const largest = Math.max(...clock)
  const words = `${Math.round(median(clock))} ms (largest ${Math.round(largest)})`
  if (processor.length === 0) return words
  return `${words}, ${Math.round(processor.reduce((sum, ms) => sum + ms, 0) / processor.length)} ms of processor on average`
}

async function get<T>(desk: OpenedDesk, path: string): Promise<T> {
  return answerOf<T>(path, await fetch(`${desk.url}${path}`))
}

async function post<T>(desk: OpenedDesk, path: string, body: unknown): Promise<T> {
  const headers = { 'content-type': 'application/json' }
  return answerOf<T>(path, await fetch(`${desk.url}${path}`, { method: 'POST', headers, body: JSON.stringify(body) }))
}

async function answerOf<T>(path: string, response: Response): Promise<T> {
  if (!response.ok) throw new Error(`${path} answered ${response.status}: ${await response.text()}`)
  return (await response.json()) as T
}
