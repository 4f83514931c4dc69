import { revokeKeyAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { revokeKey } from '../../app/revokeKey.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function revokeKeyRoute(app: FastifyInstance, ports: Ports): void {
  const options = { config: { access: 'coordinator' as const, audit: false as const } }
  app.post(routes.revokeKey.path, options, async (request, reply) => {
    const ask = readAsk(revokeKeyAskSchema, request.body)
    return replyWith(reply, ask.ok ? await revokeKey(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
