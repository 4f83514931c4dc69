import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { myRecord } from '../../app/myRecord.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

export function myRecordRoute(app: FastifyInstance, ports: Ports): void {
  app.get<{ Params: { gauge: string } }>(routes.myRecord.path, requireRole('observer'), async (request, reply) =>
    replyWith(reply, await myRecord(ports, { actor: actorOf(request), gauge: request.params.gauge })),
  )
}
