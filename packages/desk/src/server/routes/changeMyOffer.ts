import { changeMyOfferAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { changeMyOffer } from '../../app/changeMyOffer.ts'
import type { Ports } from '../../ports/ports.ts'
import { limitAttempts } from '../access/limits.ts'
import { readAsk, replyWith } from '../reply.ts'

/** Whoever holds the link: the use case looks at it. Guesses are counted like those at the sign-in. */
export function changeMyOfferRoute(app: FastifyInstance, ports: Ports): void {
  const config = { access: 'anyone' as const, audit: false as const, ...limitAttempts(app.limits) }
  app.post(routes.changeMyOffer.path, { config }, async (request, reply) => {
    const ask = readAsk(changeMyOfferAskSchema, request.body)
    return replyWith(reply, ask.ok ? await changeMyOffer(ports, ask.value) : ask)
  })
}
