import { forgetCandidateAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { forgetCandidate } from '../../app/forgetCandidate.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function forgetCandidateRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.forgetCandidate.path, { config: { access: 'coordinator', audit: false } }, async (request, reply) => {
    const ask = readAsk(forgetCandidateAskSchema, request.body)
    return replyWith(reply, ask.ok ? await forgetCandidate(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
