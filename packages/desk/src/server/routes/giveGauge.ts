import { giveGaugeAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { giveGauge } from '../../app/giveGauge.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function giveGaugeRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.giveGauge.path, { config: { access: 'coordinator', audit: false } }, async (request, reply) => {
    const ask = readAsk(giveGaugeAskSchema, request.body)
    return replyWith(reply, ask.ok ? await giveGauge(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
