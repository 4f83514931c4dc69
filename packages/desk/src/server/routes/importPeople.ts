import { importPeopleAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { importPeople } from '../../app/importPeople.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function importPeopleRoute(app: FastifyInstance, ports: Ports): void {
  app.post(
    routes.importPeople.path,
    { bodyLimit: 512 * 1024, config: { access: 'coordinator', audit: false } },
    async (request, reply) => {
      const ask = readAsk(importPeopleAskSchema, request.body)
      return replyWith(reply, ask.ok ? await importPeople(ports, ask.value, doerFrom(actorOf(request))) : ask)
    },
  )
}
