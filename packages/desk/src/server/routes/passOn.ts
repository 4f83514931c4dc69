import { passOnAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { namedBy } from '../../app/access/doer.ts'
import { passOn } from '../../app/passOn.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function passOnRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.passOn.path, { config: { access: 'colleague', audit: false } }, async (request, reply) => {
    const ask = readAsk(passOnAskSchema, request.body)
    const who = ask.ok ? namedBy(actorOf(request), ask.value.by) : null
    return replyWith(reply, ask.ok ? await passOn(ports, { ...ask.value, ...who }) : ask)
  })
}
