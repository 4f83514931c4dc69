import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { signOut } from '../../app/signOut.ts'
import type { Ports } from '../../ports/ports.ts'
import { sessionSecret, takeSession } from '../access/cookies.ts'
import { replyWith } from '../reply.ts'

export function signOutRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.signOut.path, { config: { access: 'anyone', audit: false } }, async (request, reply) => {
    const doer = request.actor === null ? null : doerFrom(request.actor)
    const answer = await signOut(ports, { secret: sessionSecret(request), doer })
    takeSession(reply)
    return replyWith(reply, answer)
  })
}
