import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { exportDay } from '../../app/exportDay.ts'
import type { Ports } from '../../ports/ports.ts'
import { replyWith } from '../reply.ts'

export function exportDayRoute(app: FastifyInstance, ports: Ports): void {
  app.get<{ Params: { day: string } }>(routes.exportDay.path, async (request, reply) => {
    const answer = await exportDay(ports, { day: request.params.day })
    if (answer.ok) reply.type('application/geo+json')
    return replyWith(reply, answer)
  })
}
