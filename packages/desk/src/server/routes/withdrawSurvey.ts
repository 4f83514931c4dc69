import { routes, withdrawSurveyAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { withdrawSurvey } from '../../app/withdrawSurvey.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function withdrawSurveyRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.withdrawSurvey.path, { config: { access: 'observer', audit: false } }, async (request, reply) => {
    const ask = readAsk(withdrawSurveyAskSchema, request.body)
    return replyWith(
      reply,
      ask.ok ? await withdrawSurvey(ports, { ...ask.value, actor: actorOf(request) }, doerFrom(actorOf(request))) : ask,
    )
  })
}
