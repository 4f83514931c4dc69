import { routes, whatIfAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { whatIf } from '../../app/whatIf.ts'
import type { Ports } from '../../ports/ports.ts'
import { readAsk, replyWith } from '../reply.ts'

/** A question, though it is posted: it stores nothing, and whoever may look may ask it. */
export function whatIfRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.whatIf.path, { config: { access: 'viewer' } }, async (request, reply) => {
    const ask = readAsk(whatIfAskSchema, request.body)
    return replyWith(reply, ask.ok ? await whatIf(ports, ask.value) : ask)
  })
}
