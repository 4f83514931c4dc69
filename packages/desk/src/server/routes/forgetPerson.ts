import { personAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { forgetPerson } from '../../app/forgetPerson.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function forgetPersonRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.forgetPerson.path, { config: { access: 'coordinator', audit: false } }, async (request, reply) => {
    const ask = readAsk(personAskSchema, request.body)
    return replyWith(reply, ask.ok ? await forgetPerson(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
