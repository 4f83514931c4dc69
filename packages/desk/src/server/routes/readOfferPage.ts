import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { readOfferPage } from '../../app/readOfferPage.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

export function readOfferPageRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.readOfferPage.path, requireRole('viewer'), async (_request, reply) => {
    return replyWith(reply, await readOfferPage(ports))
  })
}
