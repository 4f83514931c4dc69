import { drillsAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { askRefresher } from '../../app/askRefresher.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function askRefresherRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.askRefresher.path, { config: { access: 'colleague', audit: false } }, async (request, reply) => {
    const ask = readAsk(drillsAskSchema, request.body)
    return replyWith(reply, ask.ok ? await askRefresher(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
