import { routes, setPasswordAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { setPassword } from '../../app/setPassword.ts'
import type { Ports } from '../../ports/ports.ts'
import { limitAttempts } from '../access/limits.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

/** Coordinators, for anybody; others, for themselves. */
export function setPasswordRoute(app: FastifyInstance, ports: Ports): void {
  const config = { access: 'viewer' as const, audit: false as const, ...limitAttempts(app.limits) }
  app.post(routes.setPassword.path, { config }, async (request, reply) => {
    const ask = readAsk(setPasswordAskSchema, request.body)
    const actor = actorOf(request)
    return replyWith(reply, ask.ok ? await setPassword(ports, ask.value, actor, doerFrom(actor)) : ask)
  })
}
