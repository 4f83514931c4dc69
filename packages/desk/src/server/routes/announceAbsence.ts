import { announceAbsenceAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { announceAbsence } from '../../app/announceAbsence.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function announceAbsenceRoute(app: FastifyInstance, ports: Ports): void {
  app.post(
    routes.announceAbsence.path,
    { config: { access: 'observer', audit: 'announceAbsence' } },
    async (request, reply) => {
      const ask = readAsk(announceAbsenceAskSchema, request.body)
      return replyWith(reply, ask.ok ? await announceAbsence(ports, { ...ask.value, actor: actorOf(request) }) : ask)
    },
  )
}
