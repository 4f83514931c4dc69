import { routes, signInAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { answered } from '../../app/answer.ts'
import { signIn } from '../../app/signIn.ts'
import type { Ports } from '../../ports/ports.ts'
import { giveSession, sessionSecret } from '../access/cookies.ts'
import { limitAttempts, limitByMail } from '../access/limits.ts'
import { whoAnswers } from '../access/whoAnswers.ts'
import { readAsk, replyWith } from '../reply.ts'

export function signInRoute(app: FastifyInstance, ports: Ports): void {
  const options = {
    config: { access: 'anyone' as const, audit: false as const, ...limitAttempts(app.limits) },
    preHandler: limitByMail(app, 'signIn', app.limits.attemptsPerMail),
  }
  app.post(routes.signIn.path, options, async (request, reply) => {
    const ask = readAsk(signInAskSchema, request.body)
    if (!ask.ok) return replyWith(reply, ask)
    const signedIn = await signIn(ports, { ...ask.value, former: sessionSecret(request) })
    if (!signedIn.ok) return replyWith(reply, signedIn)
    giveSession(reply, signedIn.value.secret, signedIn.value.maxAgeS)
    return replyWith(reply, answered(whoAnswers(signedIn.value.actor)))
  })
}
