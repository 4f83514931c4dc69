import { readSiteAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { readSite } from '../../app/readSite.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, requireRole } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function readSiteRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.readSite.path, requireRole('observer'), async (request, reply) => {
    const ask = readAsk(readSiteAskSchema, request.query)
    return replyWith(reply, ask.ok ? await readSite(ports, { ...ask.value, actor: actorOf(request) }) : ask)
  })
}
