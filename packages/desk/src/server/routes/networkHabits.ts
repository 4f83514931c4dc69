import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { networkHabits } from '../../app/networkHabits.ts'
import type { Ports } from '../../ports/ports.ts'
import { replyWith } from '../reply.ts'

export function networkHabitsRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.networkHabits.path, async (_request, reply) => replyWith(reply, await networkHabits(ports)))
}
