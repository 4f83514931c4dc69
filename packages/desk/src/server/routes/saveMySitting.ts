import { mySittingAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { saveMySitting } from '../../app/saveMySitting.ts'
import type { Ports } from '../../ports/ports.ts'
import { limitAttempts } from '../access/limits.ts'
import { readAsk, replyWith } from '../reply.ts'

/** Whoever holds the link: the use case looks at it. Guesses are counted like those at the sign-in. */
export function saveMySittingRoute(app: FastifyInstance, ports: Ports): void {
  const config = { access: 'anyone' as const, audit: false as const, ...limitAttempts(app.limits) }
  app.post(routes.saveMySitting.path, { config }, async (request, reply) => {
    const ask = readAsk(mySittingAskSchema, request.body)
    return replyWith(reply, ask.ok ? await saveMySitting(ports, ask.value) : ask)
  })
}
