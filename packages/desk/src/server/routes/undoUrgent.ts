import { routes, undoUrgentAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { namedBy } from '../../app/access/doer.ts'
import { undoUrgent } from '../../app/undoUrgent.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function undoUrgentRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.undoUrgent.path, { config: { access: 'colleague', audit: false } }, async (request, reply) => {
    const ask = readAsk(undoUrgentAskSchema, request.body)
    const who = ask.ok ? namedBy(actorOf(request), ask.value.by) : null
    return replyWith(reply, ask.ok ? await undoUrgent(ports, { ...ask.value, ...who }) : ask)
  })
}
