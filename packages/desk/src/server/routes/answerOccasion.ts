import { answerOccasionAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { answerOccasion } from '../../app/answerOccasion.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function answerOccasionRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.answerOccasion.path, { config: { access: 'colleague', audit: false } }, async (request, reply) => {
    const ask = readAsk(answerOccasionAskSchema, request.body)
    return replyWith(reply, ask.ok ? await answerOccasion(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
