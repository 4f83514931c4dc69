import { closeUrgentAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { namedBy } from '../../app/access/doer.ts'
import { closeUrgent } from '../../app/closeUrgent.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function closeUrgentRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.closeUrgent.path, { config: { access: 'colleague', audit: false } }, async (request, reply) => {
    const ask = readAsk(closeUrgentAskSchema, request.body)
    const who = ask.ok ? namedBy(actorOf(request), ask.value.by) : null
    return replyWith(reply, ask.ok ? await closeUrgent(ports, { ...ask.value, ...who }) : ask)
  })
}
