import { routes, undoAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { namedBy } from '../../app/access/doer.ts'
import { undoDecision } from '../../app/undoDecision.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function undoDecisionRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.undo.path, async (request, reply) => {
    const ask = readAsk(undoAskSchema, request.body)
    return replyWith(
      reply,
      ask.ok ? await undoDecision(ports, { ...ask.value, ...namedBy(actorOf(request), ask.value.by) }) : ask,
    )
  })
}
