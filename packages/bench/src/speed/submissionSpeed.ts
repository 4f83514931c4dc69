/**
 * Readings from phones, one to a request, 300 a second for 20 s on two cores, each durable before it is answered. Every
 * answer is looked at; then the desk is killed and each reading sent again, which must be there already, once.
 */
import { randomUUID } from 'node:crypto'
import { join } from 'node:path'
import { type NewReading, routes, sentReadingsSchema } from '@gaugewright/contract'
import { isoFromDay } from '../data/parseWideCsv.ts'
import { commandPath } from '../ours/runCommand.ts'
import { KeptConnections } from './keptConnections.ts'
import { type OpenedDesk, openDesk } from './openDesk.ts'
import { spreadMs } from './percentiles.ts'
import { processorMs } from './processorMs.ts'
import { runMeasured } from './runMeasured.ts'
import { makeCoordinator, signIn } from './signedIn.ts'
import { type SpeedLine, skipped } from './speedLine.ts'
import { syntheticNetwork } from './syntheticNetwork.ts'
import { writeNetworkFiles } from './writeNetworkFiles.ts'

const GAUGES = 500
const perSecond = 300
const seconds = 20
const cores = 2
const pastDays = 60
const connections = 60
const days = (perSecond * seconds) / GAUGES
const what = `${perSecond} submissions a second for ${seconds} s`

interface Submission {
  gauge: string
  reading: NewReading
}

export async function submissionSpeed(workFolder: string): Promise<SpeedLine[]> {
  const today = Math.floor(Date.now() / 86_400_000)
  const firstDay = today - days - pastDays
  const network = syntheticNetwork({ gaugeCount: GAUGES, dayCount: pastDays, firstDay, seed: 11 })
  const files = writeNetworkFiles(workFolder, network, false)
  const ledger = join(workFolder, 'submissions.db')
  const words = [
    commandPath,
    'import',
    files.gauges,
    files.readings,
    '--db',
    ledger,
    '--time-zone',
    'UTC',
    '--unit',
    'mm',
  ]
  const made = await runMeasured(process.execPath, words)
  if (made.failure !== null) return [skipped(what, made.failure)]
  makeCoordinator(ledger)
  const serve = ['serve', '--db', ledger, '--no-open']
  const desk = await openDesk(serve, cores)
  let submissions: Submission[]
  let lines: SpeedLine[]
  try {
    const cookie = await signIn(desk.url)
    // The desk learns its network after the start: not what is measured here.
    await (await fetch(`${desk.url}/api/days/latest`, { headers: { cookie } })).arrayBuffer()
    submissions = submissionsOf(network.gauges.ids, today - days)
    lines = await sendAll(desk, cookie, submissions)
  } finally {
    desk.child.kill('SIGKILL')
    await desk.close()
  }
  const again = await openDesk(serve)
  try {
    const kept = await keptAlready(again, submissions)
    if (kept !== submissions.length) throw new Error(`${kept} of ${submissions.length} were there after a kill`)
    return [
      ...lines,
      { what: `${what}: there once after kill -9`, figure: `${kept} of ${submissions.length}`, aim: 'all' },
    ]
  } finally {
    await again.close()
  }
}

/** Day after day, all gauges. */
function submissionsOf(gauges: readonly string[], firstDay: number): Submission[] {
  return Array.from({ length: days }, (_, step) => isoFromDay(firstDay + step)).flatMap((day, step) =>
    gauges.map((gauge, index) => ({
      gauge,
      reading: {
        id: randomUUID(),
        firstDay: day,
        lastDay: day,
        readAtUtc: null,
        text: (((index * 7 + step) % 90) / 10).toFixed(1),
        unit: 'mm',
        remark: null,
        confirmed: null,
        corrects: null,
      },
    })),
  )
}

async function sendAll(desk: OpenedDesk, cookie: string, submissions: readonly Submission[]): Promise<SpeedLine[]> {
  const phones = new KeptConnections(connections)
  const times: number[] = []
  const failures: unknown[] = []
  const sending: Promise<void>[] = []
  const spentBefore = processorMs(desk.child.pid)
  const startMs = performance.now()
  for (const [number, { gauge, reading }] of submissions.entries()) {
    const dueMs = startMs + (1000 * number) / perSecond
    const waitMs = dueMs - performance.now()
    if (waitMs > 0) await new Promise((resume) => setTimeout(resume, waitMs))
    sending.push(
      send(phones, desk.url, cookie, gauge, [reading])
        .then((fresh) => {
          if (fresh !== 1) throw new Error(`${gauge}, ${reading.lastDay}: not taken as new`)
          // From when it was due: a sender that comes late itself would flatter the desk.
          times.push(performance.now() - dueMs)
        })
        .catch((error: unknown) => void failures.push(error)),
    )
  }
  await Promise.all(sending)
  phones.close()
  if (failures.length > 0) throw new Error(`${failures.length} of ${sending.length} failed; the first: ${failures[0]}`)
  const tookS = (performance.now() - startMs) / 1000
  const spentAfter = processorMs(desk.child.pid)
  const perS = `${Math.round(times.length / tookS)} a second sustained`
  const spent =
    spentBefore === null || spentAfter === null
      ? ''
      : `; ${((spentAfter - spentBefore) / times.length).toFixed(2)} ms of the desk's processor each`
  return [
    {
      what: `${what}, ${cores} cores`,
      figure: `${perS}; ${times.length} answered in ${tookS.toFixed(1)} s${spent}`,
      aim: `${perSecond} a second`,
    },
    { what: `${what}: answer to the sender`, figure: spreadMs(times), aim: '' },
  ]
}

/** @returns how many of them are new to the desk. @throws {Error} where an answer does not name each of them */
async function send(
  phones: KeptConnections,
  url: string,
  cookie: string,
  gauge: string,
  readings: readonly NewReading[],
): Promise<number> {
  const headers = { cookie, 'content-type': 'application/json' }
  const body = JSON.stringify({ gauge, readings })
  const { status, text } = await phones.post(`${url}${routes.sendReadings.path}`, headers, body)
  if (status !== 200) throw new Error(`a submission was answered with ${status}: ${text}`)
  const { received } = sentReadingsSchema.parse(JSON.parse(text))
  if (readings.some(({ id }, index) => received[index]?.id !== id))
    throw new Error(`not every reading is named: ${text}`)
  return received.filter(({ isNew }) => isNew).length
}

async function keptAlready(desk: OpenedDesk, submissions: readonly Submission[]): Promise<number> {
  const cookie = await signIn(desk.url)
  const phones = new KeptConnections(1)
  let kept = 0
  for (const gauge of new Set(submissions.map((one) => one.gauge))) {
    const readings = submissions.filter((one) => one.gauge === gauge).map(({ reading }) => reading)
    kept += readings.length - (await send(phones, desk.url, cookie, gauge, readings))
  }
  phones.close()
  return kept
}
