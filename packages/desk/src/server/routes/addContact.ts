import { addContactAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { addContact } from '../../app/addContact.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function addContactRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.addContact.path, { config: { access: 'colleague', audit: false } }, async (request, reply) => {
    const ask = readAsk(addContactAskSchema, request.body)
    return replyWith(reply, ask.ok ? await addContact(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
