/** Finds out who asks, and lets nobody through who may not; see requestActor.ts for how a route says who may. */
import { isAtLeast, ownerAtTheDesk, type Role } from '@gaugewright/contract'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { actorBehind } from '../../app/access/sessions.ts'
import { refused } from '../../app/answer.ts'
import type { Ports } from '../../ports/ports.ts'
import { replyWith } from '../reply.ts'
import { sessionSecret } from './cookies.ts'
import './requestActor.ts'

const SAFE_METHODS = new Set(['GET', 'HEAD', 'OPTIONS'])

/**
 * Runs in two steps: the actor is known before requests are counted, and who may not is turned away before the body is
 * read.
 */
/** @param mayOpen  whether the desk may open at once for whoever sits at this computer */
export function findActor(app: FastifyInstance, ports: Ports, mayOpen: boolean): void {
  const seenToday = new Map<string, string>()
  app.decorateRequest('actor', null)
  app.addHook('onRequest', async (request) => {
    if (neededRole(request) === null) return
    const secret = sessionSecret(request)
    if (secret !== undefined) request.actor = await actorBehind(ports, secret)
    if (request.actor === null && mayOpen && (await isOpen(ports, request))) request.actor = ownerAtTheDesk
    const { actor } = request
    if (actor === null || actor === ownerAtTheDesk) return
    const today = ports.clock.nowUtc().slice(0, 10)
    if (seenToday.get(actor.personId) === today) return
    seenToday.set(actor.personId, today)
    await ports.access.sawOn(actor.personId, today)
  })
}

export function turnAway(app: FastifyInstance): void {
  app.addHook('preParsing', async (request, reply) => {
    const needed = neededRole(request)
    if (needed === null || needed === 'anyone') return
    const { actor } = request
    if (actor === null) {
      const answer = refused('SIGN_IN_NEEDED', 'nobody is signed in here', 'Sign in, then try again.')
      await replyWith(reply, answer)
      return reply
    }
    if (isAtLeast(actor.role, needed)) return
    const seen = `this needs a ${needed}; ${actor.name} is ${actor.role}`
    await replyWith(reply, refused('ROLE_TOO_LOW', seen, 'Ask your coordinator.'))
    return reply
  })
}

/** Null where there is nothing to guard: the page itself, its styles and programs. */
function neededRole(request: FastifyRequest): Role | 'anyone' | null {
  const { access } = request.routeOptions.config
  if (access !== undefined) return access
  if (request.is404) return null
  if (!(request.routeOptions.url ?? request.url).startsWith('/api/')) return null
  return SAFE_METHODS.has(request.method) ? 'viewer' : 'colleague'
}

/**
 * The desk opens at once for whoever sits at this computer, as long as nobody has a password. What a proxy passes on comes
 * from this computer too, and is not let in.
 */
async function isOpen(ports: Pick<Ports, 'access'>, request: FastifyRequest): Promise<boolean> {
  const { headers, socket } = request
  const isPassedOn = ['forwarded', 'x-forwarded-for', 'x-real-ip', 'via'].some((name) => headers[name] !== undefined)
  return isLoopback(socket.remoteAddress ?? '') && !isPassedOn && !(await ports.access.hasAnyPassword())
}

function isLoopback(address: string): boolean {
  return /^(::ffff:)?127\./.test(address) || address === '::1'
}
