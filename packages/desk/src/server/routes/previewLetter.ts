import { previewLetterAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { previewLetter } from '../../app/previewLetter.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, requireRole } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function previewLetterRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.previewLetter.path, requireRole('colleague'), async (request, reply) => {
    const ask = readAsk(previewLetterAskSchema, request.query)
    return replyWith(
      reply,
      ask.ok ? await previewLetter(ports, { ...ask.value, coordinator: actorOf(request).name }) : ask,
    )
  })
}
