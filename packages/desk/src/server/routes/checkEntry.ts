import { checkEntryAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { checkEntry } from '../../app/checkEntry.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function checkEntryRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.checkEntry.path, { config: { access: 'observer', audit: false } }, async (request, reply) => {
    const ask = readAsk(checkEntryAskSchema, request.body)
    return replyWith(reply, ask.ok ? await checkEntry(ports, { ...ask.value, actor: actorOf(request) }) : ask)
  })
}
