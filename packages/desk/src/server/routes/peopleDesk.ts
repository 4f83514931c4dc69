import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { peopleDesk } from '../../app/peopleDesk.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

export function peopleDeskRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.peopleDesk.path, requireRole('viewer'), async (_request, reply) => {
    return replyWith(reply, await peopleDesk(ports))
  })
}
