import { routes, urgentFormAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { urgentForm } from '../../app/urgentForm.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, requireRole } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function urgentFormRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.urgentForm.path, requireRole('observer'), async (request, reply) => {
    const ask = readAsk(urgentFormAskSchema, request.query)
    return replyWith(reply, ask.ok ? await urgentForm(ports, { ...ask.value, actor: actorOf(request) }) : ask)
  })
}
