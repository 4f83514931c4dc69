import { markSeenAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { namedBy } from '../../app/access/doer.ts'
import { markSeen } from '../../app/markSeen.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function markSeenRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.markSeen.path, { config: { access: 'colleague', audit: false } }, async (request, reply) => {
    const ask = readAsk(markSeenAskSchema, request.body)
    const who = ask.ok ? namedBy(actorOf(request), ask.value.by) : null
    return replyWith(reply, ask.ok ? await markSeen(ports, { ...ask.value, ...who }) : ask)
  })
}
