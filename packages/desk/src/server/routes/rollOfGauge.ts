import { rollAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { rollOfGauge } from '../../app/rollOfGauge.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, requireRole } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function rollOfGaugeRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.rollOfGauge.path, requireRole('observer'), async (request, reply) => {
    const ask = readAsk(rollAskSchema, request.query)
    return replyWith(reply, ask.ok ? await rollOfGauge(ports, { ...ask.value, actor: actorOf(request) }) : ask)
  })
}
