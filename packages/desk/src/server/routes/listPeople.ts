import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { listPeople } from '../../app/listPeople.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

export function listPeopleRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.listPeople.path, requireRole('coordinator'), async (_request, reply) =>
    replyWith(reply, await listPeople(ports)),
  )
}
