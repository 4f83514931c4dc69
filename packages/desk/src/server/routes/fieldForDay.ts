import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { fieldForDay } from '../../app/fieldForDay.ts'
import type { Ports } from '../../ports/ports.ts'
import { replyWith } from '../reply.ts'

export function fieldForDayRoute(app: FastifyInstance, ports: Ports): void {
  app.get<{ Params: { day: string } }>(routes.fieldForDay.path, async (request, reply) =>
    replyWith(reply, await fieldForDay(ports, { day: request.params.day })),
  )
}
