import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { offerPage } from '../../app/offerPage.ts'
import type { Ports } from '../../ports/ports.ts'
import { replyWith } from '../reply.ts'

export function offerPageRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.offerPage.path, { config: { access: 'anyone', audit: false } }, async (_request, reply) =>
    replyWith(reply, await offerPage(ports)),
  )
}
