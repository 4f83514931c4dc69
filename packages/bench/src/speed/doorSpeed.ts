/** Ten thousand readings by the machine interface in one call, stored durably and each answered; and the same call again. */
import { join } from 'node:path'
import { commandPath } from '../ours/runCommand.ts'
import { openDesk } from './openDesk.ts'
import { runMeasured } from './runMeasured.ts'
import { type SpeedLine, skipped } from './speedLine.ts'
import { syntheticNetwork } from './syntheticNetwork.ts'
import { median } from './timings.ts'
import { writeNetworkFiles } from './writeNetworkFiles.ts'

const GAUGES = 500
const DAYS = 20
const ROUNDS = 5
const aim = '2 s'

export async function doorSpeed(workFolder: string): Promise<SpeedLine[]> {
  const what = `${GAUGES * DAYS} readings in one call`
  const network = syntheticNetwork({ gaugeCount: GAUGES, dayCount: 1, firstDay: 20_000, seed: 7 })
  const files = writeNetworkFiles(workFolder, network, false)
  const ledger = join(workFolder, 'door.db')
  const run = (...words: string[]) => runMeasured(process.execPath, [commandPath, ...words])
  const made = await run('import', files.gauges, '--db', ledger, '--time-zone', 'UTC')
  if (made.failure !== null) return [skipped(what, made.failure)]
  const key = await run('key', 'add', 'bench', '--scopes', 'send,read', '--db', ledger)
  if (key.failure !== null) return [skipped(what, key.failure)]
  const desk = await openDesk(['serve', '--db', ledger, '--no-open'])
  const headers = { authorization: `Bearer ${key.stdout.trim()}`, 'content-type': 'application/json' }
  try {
    const { gauges } = (await (await fetch(`${desk.url}/api/v1/gauges`, { headers })).json()) as Gauges
    const firsts: number[] = []
    const agains: number[] = []
    for (let round = 0; round < ROUNDS; round++) {
      const body = JSON.stringify({ readings: readingsFrom(gauges, round) })
      firsts.push(await send(desk.url, headers, `round-${round}`, body))
      agains.push(await send(desk.url, headers, `round-${round}`, body))
    }
    const word = (figures: number[]): string =>
      `${Math.round(median(figures))} ms (largest ${Math.round(Math.max(...figures))}) of ${ROUNDS}`
    return [
      { what, figure: word(firsts), aim },
      { what: `${what}, sent again`, figure: word(agains), aim: '' },
    ]
  } finally {
    await desk.close()
  }
}

interface Gauges {
  gauges: { gauge: string }[]
}

/** Of days that no round shares. */
function readingsFrom(gauges: Gauges['gauges'], round: number): object[] {
  const firstMs = Date.UTC(2020, 0, 1) + round * DAYS * 86_400_000
  return Array.from({ length: DAYS }, (_, step) =>
    new Date(firstMs + step * 86_400_000).toISOString().slice(0, 10),
  ).flatMap((day, step) =>
    gauges.map(({ gauge }, index) => ({ gauge, day, amount: (((index * 7 + step) % 90) / 10).toFixed(1), unit: 'mm' })),
  )
}

/** @returns milliseconds by the clock until the answer was read. @throws {Error} where a reading was not taken */
async function send(url: string, headers: Record<string, string>, key: string, body: string): Promise<number> {
  const started = performance.now()
  const response = await fetch(`${url}/api/v1/readings`, {
    method: 'POST',
    headers: { ...headers, 'idempotency-key': key },
    body,
  })
  const answer = (await response.json()) as { stored?: number; rows?: unknown[] }
  const spentMs = performance.now() - started
  if (answer.stored !== GAUGES * DAYS || answer.rows?.length !== GAUGES * DAYS) {
    throw new Error(`${response.status}: ${JSON.stringify(answer).slice(0, 200)}`)
  }
  return spentMs
}
