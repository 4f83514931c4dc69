import { contactsAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { listContacts } from '../../app/listContacts.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function listContactsRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.listContacts.path, requireRole('colleague'), async (request, reply) => {
    const ask = readAsk(contactsAskSchema, request.query)
    return replyWith(reply, ask.ok ? await listContacts(ports, ask.value) : ask)
  })
}
