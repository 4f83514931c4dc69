import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { drillsDue } from '../../app/drillsDue.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

export function drillsDueRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.drillsDue.path, requireRole('viewer'), async (_request, reply) => {
    return replyWith(reply, await drillsDue(ports))
  })
}
