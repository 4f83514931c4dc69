import { Readable } from 'node:stream'
import { exportAcceptedAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { exportAccepted } from '../../app/exportAccepted.ts'
import type { Ports } from '../../ports/ports.ts'
import { readAsk, replyWith } from '../reply.ts'

export function exportAcceptedRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.exportAccepted.path, async (request, reply) => {
    const ask = readAsk(exportAcceptedAskSchema, request.query)
    const answer = ask.ok ? await exportAccepted(ports, ask.value) : ask
    if (!answer.ok) return replyWith(reply, answer)
    reply.header('content-disposition', 'attachment; filename="accepted.csv"')
    return reply.type('text/csv; charset=utf-8').send(Readable.from(answer.value.lines))
  })
}
