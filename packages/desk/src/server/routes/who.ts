import { routes, type Who } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { answered } from '../../app/answer.ts'
import type { Ports } from '../../ports/ports.ts'
import { whoAnswers } from '../access/whoAnswers.ts'
import { replyWith } from '../reply.ts'

export function whoRoute(app: FastifyInstance, _ports: Ports): void {
  app.get(routes.who.path, { config: { access: 'anyone' } }, async (request, reply) =>
    replyWith<Who>(reply, answered(whoAnswers(request.actor))),
  )
}
