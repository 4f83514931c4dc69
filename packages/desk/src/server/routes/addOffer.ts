import { addOfferAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { addOffer } from '../../app/addOffer.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function addOfferRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.addOffer.path, { config: { access: 'colleague', audit: false } }, async (request, reply) => {
    const ask = readAsk(addOfferAskSchema, request.body)
    return replyWith(reply, ask.ok ? await addOffer(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
