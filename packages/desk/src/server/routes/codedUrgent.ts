import { codedUrgentAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { codedUrgent } from '../../app/codedUrgent.ts'
import type { Ports } from '../../ports/ports.ts'
import { readAsk, replyWith } from '../reply.ts'

export function codedUrgentRoute(app: FastifyInstance, ports: Ports): void {
  app.get<{ Params: { report: string } }>(routes.codedUrgent.path, async (request, reply) => {
    const ask = readAsk(codedUrgentAskSchema, request.query)
    const reportId = request.params.report
    return replyWith(reply, ask.ok ? await codedUrgent(ports, { reportId, form: ask.value.form }) : ask)
  })
}
