import { photoLimits, routes, saveMyYardAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { saveMyYard } from '../../app/saveMyYard.ts'
import type { Ports } from '../../ports/ports.ts'
import { limitAttempts } from '../access/limits.ts'
import { readAsk, replyWith } from '../reply.ts'

/** Six photos in base64 as the page draws them anew, and the plan. The limit of attempts stands before the body. */
const BODY_LIMIT_BYTES = photoLimits.perReport * 1_400_000 + 512 * 1024

/** Whoever holds the link: the use case looks at it. Guesses are counted like those at the sign-in. */
export function saveMyYardRoute(app: FastifyInstance, ports: Ports): void {
  const config = { access: 'anyone' as const, audit: false as const, ...limitAttempts(app.limits) }
  app.post(routes.saveMyYard.path, { bodyLimit: BODY_LIMIT_BYTES, config }, async (request, reply) => {
    const ask = readAsk(saveMyYardAskSchema, request.body)
    return replyWith(reply, ask.ok ? await saveMyYard(ports, ask.value) : ask)
  })
}
