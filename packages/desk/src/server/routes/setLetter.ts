import { routes, setLetterAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { setLetter } from '../../app/setLetter.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function setLetterRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.setLetter.path, { config: { access: 'coordinator', audit: false } }, async (request, reply) => {
    const ask = readAsk(setLetterAskSchema, request.body)
    return replyWith(reply, ask.ok ? await setLetter(ports, ask.value, doerFrom(actorOf(request))) : ask)
  })
}
