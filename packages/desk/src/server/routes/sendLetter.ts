import { routes, sendLetterAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { sendLetter } from '../../app/sendLetter.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { deskUrlOf } from '../deskUrlOf.ts'
import { readAsk, replyWith } from '../reply.ts'

export function sendLetterRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.sendLetter.path, { config: { access: 'colleague', audit: false } }, async (request, reply) => {
    const ask = readAsk(sendLetterAskSchema, request.body)
    return replyWith(
      reply,
      ask.ok
        ? await sendLetter(ports, { ...ask.value, deskUrl: deskUrlOf(app, request) }, doerFrom(actorOf(request)))
        : ask,
    )
  })
}
