/**
 * Events of urgent reports as they happen (server-sent events). Resumes after Last-Event-ID, or the query `after`; says
 * that it lives every ten seconds; ends after half an hour, so that a sign-in is looked at again, and is then asked anew.
 */
import { PassThrough } from 'node:stream'
import { routes } from '@gaugewright/contract'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { followUrgent } from '../../app/followUrgent.ts'
import { firstNetwork } from '../../app/urgent/firstNetwork.ts'
import type { Ports } from '../../ports/ports.ts'
import { replyWith } from '../reply.ts'

const beatMs = 10_000
const longestMs = 30 * 60_000
/** A desk that reads no more than this behind is gone. */
const mostWaitingBytes = 4 * 1024 * 1024

export function urgentLiveRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.urgentLive.path, async (request, reply) => {
    const network = await firstNetwork(ports)
    if (!network.ok) return replyWith(reply, network)
    const stopped = new AbortController()
    const lines = new PassThrough({ highWaterMark: mostWaitingBytes })
    const end = (): void => stopped.abort()
    reply.raw.once('close', end)
    const beat = setInterval(() => lines.write(`event: beat\ndata: ${ports.clock.nowUtc()}\n\n`), beatMs)
    const longest = setTimeout(end, longestMs)
    // Lines are small: each is to leave at once.
    request.raw.socket.setNoDelay(true)
    lines.write('retry: 1000\n\n')
    followUrgent(ports, {
      networkId: network.value.id,
      after: afterOf(request),
      tell: (live) => {
        const isTaken = lines.write(`id: ${live.number}\nevent: urgent\ndata: ${JSON.stringify(live)}\n\n`)
        if (!isTaken) end()
      },
      signal: stopped.signal,
    })
      .catch((error: unknown) => {
        // The page asks again from where it was.
        const told = reply.server.getDecorator<(error: Error) => void>('onFailure')
        told(error instanceof Error ? error : new Error(String(error)))
      })
      .finally(() => {
        clearInterval(beat)
        clearTimeout(longest)
        lines.end()
      })
    return reply
      .header('cache-control', 'no-store')
      .header('x-accel-buffering', 'no')
      .type('text/event-stream; charset=utf-8')
      .send(lines)
  })
}

function afterOf(request: FastifyRequest): number | null {
  const header = request.headers['last-event-id']
  const given = (typeof header === 'string' ? header : undefined) ?? (request.query as { after?: unknown }).after
  return typeof given === 'string' && /^\d{1,15}$/.test(given) ? Number(given) : null
}
