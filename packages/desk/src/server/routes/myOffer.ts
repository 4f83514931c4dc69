import { myOfferAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { myOffer } from '../../app/myOffer.ts'
import type { Ports } from '../../ports/ports.ts'
import { limitAttempts } from '../access/limits.ts'
import { readAsk, replyWith } from '../reply.ts'

/** Whoever holds the link: the use case looks at it. Guesses are counted like those at the sign-in. */
export function myOfferRoute(app: FastifyInstance, ports: Ports): void {
  const config = { access: 'anyone' as const, audit: false as const, ...limitAttempts(app.limits) }
  app.post(routes.myOffer.path, { config }, async (request, reply) => {
    const ask = readAsk(myOfferAskSchema, request.body)
    return replyWith(reply, ask.ok ? await myOffer(ports, ask.value) : ask)
  })
}
