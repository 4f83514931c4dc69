import { decideAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { namedBy } from '../../app/access/doer.ts'
import { decide } from '../../app/decide.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function decideRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.decide.path, async (request, reply) => {
    const ask = readAsk(decideAskSchema, request.body)
    return replyWith(
      reply,
      ask.ok ? await decide(ports, { ...ask.value, ...namedBy(actorOf(request), ask.value.by) }) : ask,
    )
  })
}
