import { routes, settleOutgoingAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { namedBy } from '../../app/access/doer.ts'
import { settleOutgoing } from '../../app/settleOutgoing.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, requireRole } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function settleOutgoingRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.settleOutgoing.path, requireRole('colleague'), async (request, reply) => {
    const ask = readAsk(settleOutgoingAskSchema, request.body)
    if (!ask.ok) return replyWith(reply, ask)
    return replyWith(
      reply,
      await settleOutgoing(ports, { ...ask.value, by: namedBy(actorOf(request), ask.value.by).by }),
    )
  })
}
