import { addKeyAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { addKey } from '../../app/addKey.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function addKeyRoute(app: FastifyInstance, ports: Ports): void {
  // The use case writes its own line in the trail, with the id of the key.
  const options = { config: { access: 'coordinator' as const, audit: false as const } }
  app.post(routes.addKey.path, options, async (request, reply) => {
    const ask = readAsk(addKeyAskSchema, request.body)
    return replyWith(reply, ask.ok ? await addKey(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
