import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { myGauge } from '../../app/myGauge.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

export function myGaugeRoute(app: FastifyInstance, ports: Ports): void {
  app.get<{ Params: { gauge: string } }>(routes.myGauge.path, requireRole('observer'), async (request, reply) =>
    replyWith(reply, await myGauge(ports, { actor: actorOf(request), gauge: request.params.gauge })),
  )
}
