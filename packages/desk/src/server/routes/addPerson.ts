import { addPersonAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { addPerson } from '../../app/addPerson.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function addPersonRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.addPerson.path, { config: { access: 'coordinator', audit: false } }, async (request, reply) => {
    const ask = readAsk(addPersonAskSchema, request.body)
    return replyWith(reply, ask.ok ? await addPerson(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
