/** Whoever asks; the person at the computer where a server asks nobody to sign in. */
import { type Actor, ownerAtTheDesk } from '@gaugewright/contract'
import type { FastifyRequest } from 'fastify'
import { actorOf } from './requestActor.ts'

export function askerOf(request: FastifyRequest): Actor {
  return request.actor === undefined ? ownerAtTheDesk : actorOf(request)
}
