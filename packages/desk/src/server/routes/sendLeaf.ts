import { leafAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { sendLeaf } from '../../app/sendLeaf.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { deskUrlOf } from '../deskUrlOf.ts'
import { readAsk, replyWith } from '../reply.ts'

export function sendLeafRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.sendLeaf.path, { config: { access: 'colleague', audit: false } }, async (request, reply) => {
    const ask = readAsk(leafAskSchema, request.body)
    return replyWith(
      reply,
      ask.ok
        ? await sendLeaf(
            ports,
            { ...ask.value, actor: actorOf(request), deskUrl: deskUrlOf(app, request) },
            doerFrom(actorOf(request)),
          )
        : ask,
    )
  })
}
