/**
 * From filing an urgent report to the open desks, over loopback and with durable commits: a storm files 50 reports a second
 * while four desks listen; then the whole list with all of them.
 */
import { randomUUID } from 'node:crypto'
import { join } from 'node:path'
import { type FileUrgentInput, routes, type UrgentLive } from '@gaugewright/contract'
import { commandPath } from '../ours/runCommand.ts'
import { type OpenedDesk, openDesk } from './openDesk.ts'
import { runMeasured } from './runMeasured.ts'
import { seededRandom } from './seededRandom.ts'
import { type SpeedLine, skipped } from './speedLine.ts'
import { median } from './timings.ts'

const perSecond = 50
const seconds = 20
const desks = 4
const listsTimed = 5
const aim = 'under 200 ms'

export async function urgentSpeed(workFolder: string): Promise<SpeedLine[]> {
  const ledger = join(workFolder, 'urgent.db')
  const words = ['demo', '--db', ledger, '--years', '1', '--gauges', '100', '--no-serve']
  const made = await runMeasured(process.execPath, [commandPath, ...words])
  if (made.failure !== null) return [skipped('urgent reports to open desks', made.failure)]
  const desk = await openDesk(['serve', '--db', ledger, '--no-open'])
  try {
    // The desk learns its model after the start, in a thread of its own: not what is measured here.
    await fetch(`${desk.url}/api/days/latest`)
    return [...(await storm(desk)), await wholeList(desk)]
  } finally {
    await desk.close()
  }
}

async function storm(desk: OpenedDesk): Promise<SpeedLine[]> {
  const stopped = new AbortController()
  const filedAtMs = new Map<string, number>()
  const heardMs: number[] = []
  const listening = Array.from({ length: desks }, () =>
    listen(desk.url, stopped.signal, (live) => {
      const filed = filedAtMs.get(live.reportId)
      if (filed !== undefined) heardMs.push(performance.now() - filed)
    }),
  )
  await Promise.all(listening.map(({ isOpen }) => isOpen))
  const random = seededRandom(50)
  const answeredMs: number[] = []
  const filings: Promise<void>[] = []
  const startMs = performance.now()
  for (let number = 0; number < perSecond * seconds; number++) {
    const dueMs = startMs + (1000 * number) / perSecond
    const waitMs = dueMs - performance.now()
    if (waitMs > 0) await new Promise((resume) => setTimeout(resume, waitMs))
    const report = hail(number, random)
    const sentAtMs = performance.now()
    filedAtMs.set(report.id, sentAtMs)
    filings.push(file(desk.url, report).then(() => void answeredMs.push(performance.now() - sentAtMs)))
  }
  await Promise.all(filings)
  const tookS = (performance.now() - startMs) / 1000
  const wanted = desks * perSecond * seconds
  for (let waits = 0; heardMs.length < wanted && waits < 500; waits++) await new Promise((go) => setTimeout(go, 20))
  stopped.abort()
  const what = `${perSecond} urgent reports a second for ${seconds} s, ${desks} desks listening`
  return [
    { what: `${what}: filing to desk`, figure: `${spread(heardMs)}; ${heardMs.length} of ${wanted} heard`, aim },
    { what: `${what}: answer to the sender`, figure: `${spread(answeredMs)}; in ${tookS.toFixed(1)} s`, aim: '' },
  ]
}

async function wholeList(desk: OpenedDesk): Promise<SpeedLine> {
  const times: number[] = []
  for (let round = 0; round < listsTimed; round++) {
    const started = performance.now()
    await (await fetch(`${desk.url}${routes.urgentNow.path}`)).text()
    times.push(performance.now() - started)
  }
  return {
    what: `the list with ${perSecond * seconds} reports of one storm, weighed anew`,
    figure: `${Math.round(median(times))} ms`,
    aim: '',
  }
}

function hail(number: number, random: () => number): FileUrgentInput & { id: string } {
  return {
    id: randomUUID(),
    where: { kind: 'place', latDeg: 45 + 0.4 * random(), lonDeg: 8 + 0.6 * random(), name: null },
    seenAtUtc: new Date(Date.now() - 60_000 * 30 * random()).toISOString(),
    by: `Witness ${number}`,
    seen: { kind: 'hail', largest: { diameterMm: 5 + 60 * random(), by: 'ruler' } },
  }
}

async function file(url: string, report: FileUrgentInput): Promise<void> {
  const answer = await fetch(`${url}${routes.fileUrgent.path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(report),
  })
  if (!answer.ok) throw new Error(`a report was answered with ${answer.status}: ${await answer.text()}`)
  await answer.arrayBuffer()
}

/** A desk that reads its live line as a browser does. */
function listen(url: string, signal: AbortSignal, tell: (live: UrgentLive) => void): { isOpen: Promise<void> } {
  let opened: (() => void) | null = null
  const isOpen = new Promise<void>((resolve) => {
    opened = resolve
  })
  const read = async (): Promise<void> => {
    const response = await fetch(`${url}${routes.urgentLive.path}`, { signal })
    const decoder = new TextDecoder()
    let rest = ''
    for await (const chunk of response.body as unknown as AsyncIterable<Uint8Array>) {
      opened?.()
      rest += decoder.decode(chunk, { stream: true })
      const blocks = rest.split('\n\n')
      rest = blocks.pop() ?? ''
      for (const block of blocks) {
        const data = /^event: urgent\ndata: (.*)$/m.exec(block)?.[1]
        if (data !== undefined) tell(JSON.parse(data) as UrgentLive)
      }
    }
  }
  read().catch((error: unknown) => {
    if (!signal.aborted) throw error
  })
  return { isOpen }
}

function spread(times: readonly number[]): string {
  const sorted = [...times].sort((one, other) => one - other)
  const at = (share: number): string => `${Math.round(sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN)}`
  return `median ${at(0.5)} ms, 99 of 100 within ${at(0.99)} ms, longest ${at(1)} ms`
}
