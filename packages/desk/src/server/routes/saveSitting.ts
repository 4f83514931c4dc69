import { routes, sittingAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { saveSitting } from '../../app/saveSitting.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function saveSittingRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.saveSitting.path, { config: { access: 'observer', audit: false } }, async (request, reply) => {
    const ask = readAsk(sittingAskSchema, request.body)
    return replyWith(reply, ask.ok ? await saveSitting(ports, { ...ask.value, actor: actorOf(request) }) : ask)
  })
}
