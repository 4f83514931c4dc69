import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { draftMessage } from '../../app/draftMessage.ts'
import type { Ports } from '../../ports/ports.ts'
import { replyWith } from '../reply.ts'

export function draftMessageRoute(app: FastifyInstance, ports: Ports): void {
  app.get<{ Params: { readingId: string } }>(routes.draftMessage.path, async (request, reply) =>
    replyWith(reply, await draftMessage(ports, { readingId: request.params.readingId })),
  )
}
