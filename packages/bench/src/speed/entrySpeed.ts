/**
 * The check at entry with 500 gauges, asked over loopback one after another: four amounts of each gauge beside its
 * neighbours, then one more, which the gauge's own climate answers. Some are slips and are asked back about.
 */
import { join } from 'node:path'
import { type CheckEntryAsk, checkedEntrySchema, routes } from '@gaugewright/contract'
import { z } from 'zod'
import { commandPath } from '../ours/runCommand.ts'
import { type OpenedDesk, openDesk } from './openDesk.ts'
import { spreadMs } from './percentiles.ts'
import { processorMs } from './processorMs.ts'
import { runMeasured } from './runMeasured.ts'
import { makeCoordinator, signIn } from './signedIn.ts'
import { type SpeedLine, skipped } from './speedLine.ts'

const GAUGES = 500
const aim = 'p99 under 5 ms'
/** Inches: nothing, two usual mornings, a slip of a point. */
const besideNeighbours = ['0.00', '0.12', '0.43', '4.30'] as const
const alone = '0.57'

const reviewSchema = z.object({ day: z.iso.date(), roll: z.array(z.object({ code: z.string() })) })

export async function entrySpeed(workFolder: string): Promise<SpeedLine[]> {
  const ledger = join(workFolder, 'entry.db')
  const words = ['demo', '--db', ledger, '--years', '2', '--gauges', String(GAUGES), '--no-serve']
  const made = await runMeasured(process.execPath, [commandPath, ...words])
  if (made.failure !== null) return [skipped('checks at entry', made.failure)]
  makeCoordinator(ledger)
  const desk = await openDesk(['serve', '--db', ledger, '--no-open'])
  try {
    return await checks(desk)
  } finally {
    await desk.close()
  }
}

async function checks(desk: OpenedDesk): Promise<SpeedLine[]> {
  const headers = { cookie: await signIn(desk.url), 'content-type': 'application/json' }
  const get = async (path: string): Promise<unknown> => (await fetch(`${desk.url}${path}`, { headers })).json()
  const { day, roll: gauges } = reviewSchema.parse(await get('/api/days/latest'))
  const ask = (code: string, text: string): CheckEntryAsk => ({
    gauge: code,
    firstDay: day,
    lastDay: day,
    text,
    unit: 'in',
  })
  const check = async (code: string, text: string): Promise<Checked> => {
    const before = processorMs(desk.child.pid)
    const started = performance.now()
    const body = JSON.stringify(ask(code, text))
    const answer = await fetch(`${desk.url}${routes.checkEntry.path}`, { method: 'POST', headers, body })
    const content = await answer.text()
    const clockMs = performance.now() - started
    const after = processorMs(desk.child.pid)
    if (!answer.ok) throw new Error(`a check was answered with ${answer.status}: ${content}`)
    const { question } = checkedEntrySchema.parse(JSON.parse(content))
    return {
      clockMs,
      processorMs: before === null || after === null ? null : after - before,
      isAsked: question !== null,
    }
  }
  const first = await check(gauges[0]!.code, '0.01')
  const beside: Checked[] = []
  const ownClimate: Checked[] = []
  for (const text of besideNeighbours) {
    // The first gauge has had one amount more than the others.
    for (const { code } of gauges.slice(1)) beside.push(await check(code, text))
  }
  for (const { code } of gauges.slice(1)) ownClimate.push(await check(code, alone))
  return [
    {
      what: `first check of a morning, ${gauges.length} gauges judged`,
      figure: `${Math.round(first.clockMs)} ms`,
      aim: '',
    },
    ...lines(`check at entry beside the neighbours, ${gauges.length} gauges`, beside),
    ...lines(`check at entry by the gauge's own climate`, ownClimate),
  ]
}

interface Checked {
  clockMs: number
  processorMs: number | null
  isAsked: boolean
}

function lines(what: string, all: readonly Checked[]): SpeedLine[] {
  const asked = all.filter(({ isAsked }) => isAsked).length
  const spent = all.flatMap(({ processorMs: ms }) => (ms === null ? [] : [ms]))
  const count = `${all.length} checks, ${asked} asked back`
  return [
    {
      what: `${what}: by the clock, there and back`,
      figure: `${spreadMs(all.map(({ clockMs }) => clockMs))}; ${count}`,
      aim,
    },
    ...(spent.length === 0 ? [] : [{ what: `${what}: processor of the desk`, figure: spreadMs(spent), aim }]),
  ]
}
