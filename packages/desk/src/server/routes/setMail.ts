import { routes, setMailAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { namedBy } from '../../app/access/doer.ts'
import { setMail } from '../../app/setMail.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, requireRole } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function setMailRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.setMail.path, requireRole('coordinator'), async (request, reply) => {
    const ask = readAsk(setMailAskSchema, request.body)
    if (!ask.ok) return replyWith(reply, ask)
    return replyWith(reply, await setMail(ports, { ...ask.value, by: namedBy(actorOf(request), ask.value.by).by }))
  })
}
