import { changePersonAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { changePerson } from '../../app/changePerson.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function changePersonRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.changePerson.path, { config: { access: 'coordinator', audit: false } }, async (request, reply) => {
    const ask = readAsk(changePersonAskSchema, request.body)
    return replyWith(reply, ask.ok ? await changePerson(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
