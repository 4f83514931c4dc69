import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { remind } from '../../app/remind.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

/** Only a look: at its hour the desk reminds by itself. */
export function remindRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.remind.path, requireRole('colleague'), async (_request, reply) =>
    replyWith(reply, await remind(ports, { isLook: true, by: 'nobody' })),
  )
}
