import { exportShefAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { exportShef } from '../../app/exportShef.ts'
import type { Ports } from '../../ports/ports.ts'
import { readAsk, replyWith } from '../reply.ts'

export function exportShefRoute(app: FastifyInstance, ports: Ports): void {
  app.get<{ Params: { day: string } }>(routes.exportShef.path, async (request, reply) => {
    const ask = readAsk(exportShefAskSchema, request.query)
    const answer = ask.ok ? await exportShef(ports, { ...ask.value, day: request.params.day }) : ask
    if (!answer.ok) return replyWith(reply, answer)
    reply.header('cache-control', 'no-store')
    reply.header('content-disposition', `attachment; filename="accepted-${answer.value.day}.shef"`)
    return reply.type('text/plain; charset=us-ascii').send(answer.value.text)
  })
}
