import { announceAbsenceAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { announceAbsence } from '../../app/announceAbsence.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function announceAbsenceRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.announceAbsence.path, { config: { access: 'observer', audit: false } }, async (request, reply) => {
    const ask = readAsk(announceAbsenceAskSchema, request.body)
    if (!ask.ok) return replyWith(reply, ask)
    const actor = actorOf(request)
    return replyWith(reply, await announceAbsence(ports, { ...ask.value, actor }, doerFrom(actor)))
  })
}
