import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { myDrills } from '../../app/myDrills.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

export function myDrillsRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.myDrills.path, requireRole('observer'), async (request, reply) => {
    return replyWith(reply, await myDrills(ports, { actor: actorOf(request) }))
  })
}
