import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { listKeys } from '../../app/listKeys.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

export function listKeysRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.listKeys.path, requireRole('coordinator'), async (_request, reply) =>
    replyWith(reply, await listKeys(ports)),
  )
}
