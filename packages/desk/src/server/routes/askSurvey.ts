import { askSurveyAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { askSurvey } from '../../app/askSurvey.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function askSurveyRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.askSurvey.path, { config: { access: 'colleague', audit: false } }, async (request, reply) => {
    const ask = readAsk(askSurveyAskSchema, request.body)
    return replyWith(
      reply,
      ask.ok ? await askSurvey(ports, { ...ask.value, actor: actorOf(request) }, doerFrom(actorOf(request))) : ask,
    )
  })
}
