import { drillSettingsSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { setDrills } from '../../app/setDrills.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function setDrillsRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.setDrills.path, { config: { access: 'coordinator', audit: false } }, async (request, reply) => {
    const ask = readAsk(drillSettingsSchema, request.body)
    return replyWith(reply, ask.ok ? await setDrills(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
