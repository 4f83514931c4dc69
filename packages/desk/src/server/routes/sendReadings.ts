import { routes, sendReadingsAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { sendReadings } from '../../app/sendReadings.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function sendReadingsRoute(app: FastifyInstance, ports: Ports): void {
  app.post(
    routes.sendReadings.path,
    { config: { access: 'observer', audit: 'sendReadings' } },
    async (request, reply) => {
      const ask = readAsk(sendReadingsAskSchema, request.body)
      return replyWith(reply, ask.ok ? await sendReadings(ports, { ...ask.value, actor: actorOf(request) }) : ask)
    },
  )
}
