import { routes, sendTestMailAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { namedBy } from '../../app/access/doer.ts'
import { sendTestMail } from '../../app/sendTestMail.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, requireRole } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function sendTestMailRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.sendTestMail.path, requireRole('coordinator'), async (request, reply) => {
    const ask = readAsk(sendTestMailAskSchema, request.body)
    if (!ask.ok) return replyWith(reply, ask)
    return replyWith(reply, await sendTestMail(ports, { ...ask.value, by: namedBy(actorOf(request), ask.value.by).by }))
  })
}
