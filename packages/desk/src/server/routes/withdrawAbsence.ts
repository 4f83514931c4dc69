import { routes, withdrawAbsenceAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { withdrawAbsence } from '../../app/withdrawAbsence.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function withdrawAbsenceRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.withdrawAbsence.path, { config: { access: 'observer', audit: false } }, async (request, reply) => {
    const ask = readAsk(withdrawAbsenceAskSchema, request.body)
    if (!ask.ok) return replyWith(reply, ask)
    const actor = actorOf(request)
    return replyWith(reply, await withdrawAbsence(ports, { ...ask.value, actor }, doerFrom(actor)))
  })
}
