import { listAbsencesAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { listAbsences } from '../../app/listAbsences.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function listAbsencesRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.listAbsences.path, requireRole('viewer'), async (request, reply) => {
    const ask = readAsk(listAbsencesAskSchema, request.query)
    return replyWith(reply, ask.ok ? await listAbsences(ports, ask.value) : ask)
  })
}
