import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { exportPerson } from '../../app/exportPerson.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

export function exportPersonRoute(app: FastifyInstance, ports: Ports): void {
  app.get<{ Params: { person: string } }>(
    routes.exportPerson.path,
    requireRole('coordinator'),
    async (request, reply) => {
      const ask = { personId: request.params.person }
      return replyWith(reply, await exportPerson(ports, ask, doerFrom(actorOf(request))))
    },
  )
}
