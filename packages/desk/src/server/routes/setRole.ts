import { routes, setRoleAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { setRole } from '../../app/setRole.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function setRoleRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.setRole.path, { config: { access: 'coordinator', audit: false } }, async (request, reply) => {
    const ask = readAsk(setRoleAskSchema, request.body)
    return replyWith(reply, ask.ok ? await setRole(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
