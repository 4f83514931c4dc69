/** Opens the desk on loopback until asked to stop, then closes cleanly. */
import { refused } from '../app/answer.ts'
import { warmDay } from '../app/warmDay.ts'
import type { Ports } from '../ports/ports.ts'
import { CommandStopped } from './commandStopped.ts'
import type { RunningServer, World } from './world.ts'

const FIRST_PORT = 8137
const PORTS_TRIED = 20

export interface OpenDeskAsk {
  ledger: string
  open: boolean
  /** Exactly this port, or else the first free one. */
  port?: number | undefined
}

export async function openDesk(world: World, ports: Ports, ask: OpenDeskAsk): Promise<void> {
  const stopped = world.untilStopped()
  const server = await start(world, ports, ask.port)
  const stopLearning = new AbortController()
  try {
    await world.out.write(`Gaugewright is open at ${server.url} (ledger ${ask.ledger}). Ctrl+C closes it.\n`)
    // Learned and judged once before the first look; whatever goes wrong is told when somebody looks.
    const warmed = warmDay(ports, { day: 'latest', signal: stopLearning.signal }).catch(() => undefined)
    if (ask.open && world.out.isTerminal) await world.openBrowser(server.url).catch(() => undefined)
    await stopped
    stopLearning.abort()
    await warmed
  } finally {
    await server.close()
  }
}

async function start(world: World, ports: Ports, port: number | undefined): Promise<RunningServer> {
  const onFailure = (error: Error): void => void world.err.write(`${error.stack ?? error.message}\n`)
  const candidates = port === undefined ? Array.from({ length: PORTS_TRIED }, (_, step) => FIRST_PORT + step) : [port]
  for (const candidate of candidates) {
    const server = await world.startServer(ports, { port: candidate, onFailure })
    if (server !== null) return server
  }
  const last = FIRST_PORT + PORTS_TRIED - 1
  const seen = port === undefined ? `ports ${FIRST_PORT} to ${last} are all taken` : `port ${port}`
  throw new CommandStopped(
    refused('PORT_TAKEN', seen, 'Close what listens there, or give another with --port.').problem,
  )
}
