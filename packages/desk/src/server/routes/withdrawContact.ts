import { routes, withdrawContactAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { withdrawContact } from '../../app/withdrawContact.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function withdrawContactRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.withdrawContact.path, { config: { access: 'colleague', audit: false } }, async (request, reply) => {
    const ask = readAsk(withdrawContactAskSchema, request.body)
    return replyWith(reply, ask.ok ? await withdrawContact(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
