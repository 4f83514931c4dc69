import { gaugeHabitsAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { gaugeHabits } from '../../app/gaugeHabits.ts'
import type { Ports } from '../../ports/ports.ts'
import { readAsk, replyWith } from '../reply.ts'

export function gaugeHabitsRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.gaugeHabits.path, async (request, reply) => {
    const ask = readAsk(gaugeHabitsAskSchema, request.params)
    return replyWith(reply, ask.ok ? await gaugeHabits(ports, ask.value) : ask)
  })
}
