import { offerPageWordsSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { setOfferPage } from '../../app/setOfferPage.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function setOfferPageRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.setOfferPage.path, { config: { access: 'coordinator', audit: false } }, async (request, reply) => {
    const ask = readAsk(offerPageWordsSchema, request.body)
    return replyWith(reply, ask.ok ? await setOfferPage(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
