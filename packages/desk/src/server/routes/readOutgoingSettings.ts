import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { readOutgoingSettings } from '../../app/readOutgoingSettings.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

export function readOutgoingSettingsRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.readOutgoingSettings.path, requireRole('colleague'), async (_request, reply) =>
    replyWith(reply, await readOutgoingSettings(ports)),
  )
}
