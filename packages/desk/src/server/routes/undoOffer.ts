import { routes, undoOfferAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { undoOffer } from '../../app/undoOffer.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function undoOfferRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.undoOffer.path, { config: { access: 'colleague', audit: false } }, async (request, reply) => {
    const ask = readAsk(undoOfferAskSchema, request.body)
    return replyWith(reply, ask.ok ? await undoOffer(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
