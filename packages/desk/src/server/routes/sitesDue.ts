import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { sitesDue } from '../../app/sitesDue.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

export function sitesDueRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.sitesDue.path, requireRole('viewer'), async (_request, reply) => {
    return replyWith(reply, await sitesDue(ports))
  })
}
