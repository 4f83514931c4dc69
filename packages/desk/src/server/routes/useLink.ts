import { routes, useLinkAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { answered } from '../../app/answer.ts'
import { useLink } from '../../app/useLink.ts'
import type { Ports } from '../../ports/ports.ts'
import { browserMark, giveSession, sessionSecret } from '../access/cookies.ts'
import { limitAttempts } from '../access/limits.ts'
import { whoAnswers } from '../access/whoAnswers.ts'
import { readAsk, replyWith } from '../reply.ts'

export function useLinkRoute(app: FastifyInstance, ports: Ports): void {
  const options = { config: { access: 'anyone' as const, audit: false as const, ...limitAttempts(app.limits) } }
  app.post(routes.useLink.path, options, async (request, reply) => {
    const ask = readAsk(useLinkAskSchema, request.body)
    if (!ask.ok) return replyWith(reply, ask)
    const used = await useLink(ports, {
      ...ask.value,
      browser: browserMark(request),
      former: sessionSecret(request),
    })
    if (!used.ok) return replyWith(reply, used)
    giveSession(reply, used.value.secret, used.value.maxAgeS)
    return replyWith(reply, answered(whoAnswers(used.value.actor)))
  })
}
