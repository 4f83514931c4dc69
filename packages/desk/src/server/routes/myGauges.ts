import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { myGauges } from '../../app/myGauges.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

export function myGaugesRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.myGauges.path, requireRole('observer'), async (request, reply) =>
    replyWith(reply, await myGauges(ports, { actor: actorOf(request) })),
  )
}
