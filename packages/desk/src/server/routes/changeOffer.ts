import { changeOfferAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { changeOffer } from '../../app/changeOffer.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function changeOfferRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.changeOffer.path, { config: { access: 'colleague', audit: false } }, async (request, reply) => {
    const ask = readAsk(changeOfferAskSchema, request.body)
    return replyWith(reply, ask.ok ? await changeOffer(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
