/** Tells an open People screen that something has changed, at once (server-sent events); what, it asks itself. */
import { PassThrough } from 'node:stream'
import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'

const beatMs = 10_000
const longestMs = 30 * 60_000

export function peopleLiveRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.peopleLive.path, requireRole('viewer'), async (request, reply) => {
    const lines = new PassThrough()
    const stop = ports.journal.listen(() => lines.write('event: changed\ndata: {}\n\n'))
    const beat = setInterval(() => lines.write(`event: beat\ndata: ${ports.clock.nowUtc()}\n\n`), beatMs)
    const end = (): void => {
      stop()
      clearInterval(beat)
      clearTimeout(longest)
      lines.end()
    }
    const longest = setTimeout(end, longestMs)
    reply.raw.once('close', end)
    request.raw.socket.setNoDelay(true)
    lines.write('retry: 1000\n\n')
    return reply
      .header('cache-control', 'no-store')
      .header('x-accel-buffering', 'no')
      .type('text/event-stream; charset=utf-8')
      .send(lines)
  })
}
