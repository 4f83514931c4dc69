import { auditAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { auditTrail } from '../../app/auditTrail.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function auditTrailRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.auditTrail.path, requireRole('coordinator'), async (request, reply) => {
    const ask = readAsk(auditAskSchema, request.query)
    return replyWith(reply, ask.ok ? await auditTrail(ports, ask.value) : ask)
  })
}
