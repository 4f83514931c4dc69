import { moveOfferAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { moveOffer } from '../../app/moveOffer.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function moveOfferRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.moveOffer.path, { config: { access: 'colleague', audit: false } }, async (request, reply) => {
    const ask = readAsk(moveOfferAskSchema, request.body)
    return replyWith(reply, ask.ok ? await moveOffer(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
