import { photoLimits, routes, saveSurveyAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { saveSurvey } from '../../app/saveSurvey.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

/** Six photos in base64, and the plan. */
const BODY_LIMIT_BYTES = 6 * Math.ceil(photoLimits.bytes / 3) * 4 + 512 * 1024

export function saveSurveyRoute(app: FastifyInstance, ports: Ports): void {
  app.post(
    routes.saveSurvey.path,
    { bodyLimit: BODY_LIMIT_BYTES, config: { access: 'observer', audit: false } },
    async (request, reply) => {
      const ask = readAsk(saveSurveyAskSchema, request.body)
      return replyWith(
        reply,
        ask.ok ? await saveSurvey(ports, { ...ask.value, actor: actorOf(request) }, doerFrom(actorOf(request))) : ask,
      )
    },
  )
}
