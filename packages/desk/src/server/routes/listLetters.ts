import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { listLetters } from '../../app/listLetters.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

export function listLettersRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.listLetters.path, requireRole('viewer'), async (_request, reply) => {
    return replyWith(reply, await listLetters(ports))
  })
}
