/** Opens the desk, on loopback unless it is told otherwise, until asked to stop, then closes cleanly. */
import { refused } from '../app/answer.ts'
import { runOutgoing } from '../app/outgoing/runOutgoing.ts'
import { sweepOffers } from '../app/people/sweepOffers.ts'
import { warmDay } from '../app/warmDay.ts'
import type { Ports } from '../ports/ports.ts'
import { CommandStopped } from './commandStopped.ts'
import type { RunningServer, World } from './world.ts'

const LOOPBACK = '127.0.0.1'
const FIRST_PORT = 8137
const PORTS_TRIED = 20
const DAY_MS = 86_400_000

export interface OpenDeskAsk {
  ledger: string
  open: boolean
  /** Exactly this port, or else the first free one. */
  port?: number | undefined
  /** 127.0.0.1 where left out. */
  host?: string
  publicUrl?: string
  tls?: { cert: string; key: string }
}

export async function openDesk(world: World, ports: Ports, ask: OpenDeskAsk): Promise<void> {
  const stopped = world.untilStopped()
  const server = await start(world, ports, ask)
  const stopWork = new AbortController()
  const { signal } = stopWork
  const onFailure = tellFailure(world)
  const outgoing = runOutgoing(ports, { signal, onFailure })
  try {
    await world.out.write(`Gaugewright is open at ${server.url} (ledger ${ask.ledger}). Ctrl+C closes it.\n`)
    // Learned and judged once before the first look; whatever goes wrong is told when somebody looks.
    // Closed offers go when their time is over; looked at when the desk opens, and once a day.
    const sweep = () => void sweepOffers(ports).catch(onFailure)
    sweep()
    const daily = setInterval(sweep, DAY_MS)
    signal.addEventListener('abort', () => clearInterval(daily))
    const warmed = warmDay(ports, { day: 'latest', signal }).catch(() => undefined)
    if (ask.open && world.out.isTerminal) await world.openBrowser(server.url).catch(() => undefined)
    await stopped
    stopWork.abort()
    await warmed
  } finally {
    stopWork.abort()
    await outgoing
    await server.close()
  }
}

async function start(
  world: World,
  ports: Ports,
  { port, host = LOOPBACK, publicUrl, tls }: OpenDeskAsk,
): Promise<RunningServer> {
  const onFailure = tellFailure(world)
  const candidates = port === undefined ? Array.from({ length: PORTS_TRIED }, (_, step) => FIRST_PORT + step) : [port]
  for (const candidate of candidates) {
    const server = await world.startServer(ports, {
      host,
      port: candidate,
      onFailure,
      ...(publicUrl !== undefined && { publicUrl }),
      ...(tls !== undefined && { tls }),
    })
    if (server !== null) return server
  }
  const last = FIRST_PORT + PORTS_TRIED - 1
  const seen = port === undefined ? `ports ${FIRST_PORT} to ${last} are all taken` : `port ${port}`
  throw new CommandStopped(
    refused('PORT_TAKEN', seen, 'Close what listens there, or give another with --port.').problem,
  )
}

function tellFailure(world: World): (error: Error) => void {
  return (error) => void world.err.write(`${error.stack ?? error.message}\n`)
}
