import { leafAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { leaf } from '../../app/leaf.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, requireRole } from '../access/requestActor.ts'
import { readAsk } from '../reply.ts'
import { replyWithPaper } from '../replyWithPaper.ts'

export function leafRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.leaf.path, requireRole('observer'), async (request, reply) => {
    const ask = readAsk(leafAskSchema, request.query)
    return replyWithPaper(reply, ask.ok ? await leaf(ports, { ...ask.value, actor: actorOf(request) }) : ask)
  })
}
