import type { Ports } from '../ports/ports.ts'
import { buildServer } from './buildServer.ts'

const LOOPBACK = '127.0.0.1'

/** Builds the server and listens on 127.0.0.1; null where the port is taken or not allowed. Port 0 takes a free one. */
export async function listenOnLoopback(
  ports: Ports,
  ask: { port: number; onFailure: (error: Error) => void },
): Promise<{ url: string; close: () => Promise<void> } | null> {
  const server = await buildServer(ports, { onFailure: ask.onFailure })
  try {
    const url = await server.listen({ host: LOOPBACK, port: ask.port })
    return { url, close: () => server.close() }
  } catch (error) {
    await server.close()
    const { code } = error as NodeJS.ErrnoException
    if (code === 'EADDRINUSE' || code === 'EACCES') return null
    throw error
  }
}
