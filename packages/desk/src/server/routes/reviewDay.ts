import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { reviewDay } from '../../app/reviewDay.ts'
import type { Ports } from '../../ports/ports.ts'
import { replyWith } from '../reply.ts'

export function reviewDayRoute(app: FastifyInstance, ports: Ports): void {
  app.get<{ Params: { day: string } }>(routes.reviewDay.path, async (request, reply) =>
    replyWith(reply, await reviewDay(ports, { day: request.params.day })),
  )
}
