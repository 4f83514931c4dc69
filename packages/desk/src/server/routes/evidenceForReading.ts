import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { evidenceForReading } from '../../app/evidenceForReading.ts'
import type { Ports } from '../../ports/ports.ts'
import { replyWith } from '../reply.ts'

export function evidenceForReadingRoute(app: FastifyInstance, ports: Ports): void {
  app.get<{ Params: { day: string; readingId: string } }>(routes.evidence.path, async (request, reply) =>
    replyWith(reply, await evidenceForReading(ports, { readingId: request.params.readingId })),
  )
}
