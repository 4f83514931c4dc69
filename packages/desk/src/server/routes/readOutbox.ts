import { readOutboxAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { readOutbox } from '../../app/readOutbox.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function readOutboxRoute(app: FastifyInstance, ports: Ports): void {
  // Addresses of people: for those who send.
  app.get(routes.readOutbox.path, requireRole('colleague'), async (request, reply) => {
    const ask = readAsk(readOutboxAskSchema, request.query)
    return replyWith(reply, ask.ok ? await readOutbox(ports, ask.value) : ask)
  })
}
