import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { duplicatePeople } from '../../app/duplicatePeople.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

export function duplicatePeopleRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.duplicatePeople.path, requireRole('colleague'), async (_request, reply) => {
    return replyWith(reply, await duplicatePeople(ports))
  })
}
