import { routes, urgentNowAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { urgentNow } from '../../app/urgentNow.ts'
import type { Ports } from '../../ports/ports.ts'
import { readAsk, replyWith } from '../reply.ts'

export function urgentNowRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.urgentNow.path, async (request, reply) => {
    const ask = readAsk(urgentNowAskSchema, request.query)
    return replyWith(reply, ask.ok ? await urgentNow(ports, ask.value) : ask)
  })
}
