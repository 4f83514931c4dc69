import { drillsAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { drillsOfPerson } from '../../app/drillsOfPerson.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function drillsOfPersonRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.drillsOfPerson.path, requireRole('colleague'), async (request, reply) => {
    const ask = readAsk(drillsAskSchema, request.query)
    return replyWith(reply, ask.ok ? await drillsOfPerson(ports, ask.value) : ask)
  })
}
