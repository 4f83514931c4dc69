import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { holding } from '../../app/holding.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

export function holdingRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.holding.path, requireRole('viewer'), async (_request, reply) => {
    return replyWith(reply, await holding(ports))
  })
}
