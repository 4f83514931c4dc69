/**
 * Who a request comes from, and whether they may. Every path under `/api/` is closed unless its route says otherwise:
 * reading needs a viewer, changing a colleague. A route opens itself wider, or narrower, where it is registered:
 *
 *   app.post(path, { config: { access: 'observer' } }, handler)   // any signed-in person; the handler looks at the gauges
 *   app.get(path, requireRole('coordinator'), handler)            // the same, shorter
 *   app.post(path, { config: { access: 'anyone' } }, handler)     // no sign-in; the handler checks its own key
 *
 * Within a handler `request.actor` is who asks (never null but with 'anyone'); `actorOf(request)` says so to the compiler.
 */
import type { Actor, Role } from '@gaugewright/contract'
import type { FastifyRequest, RouteShorthandOptions } from 'fastify'

declare module 'fastify' {
  interface FastifyRequest {
    actor: Actor | null
  }
  interface FastifyContextConfig {
    /** The least role that may; 'anyone' asks for no sign-in. */
    access?: Role | 'anyone'
    /** Name in the trail of what was done; false where what is stored says itself who did it (readings). */
    audit?: string | false
  }
}

export function requireRole(role: Role): RouteShorthandOptions {
  return { config: { access: role } }
}

/** Whoever asks. A route with `access: 'anyone'` must look at `request.actor` itself. */
export function actorOf(request: FastifyRequest): Actor {
  if (request.actor === null) throw new Error(`${request.url} asks for an actor, but lets anyone in`)
  return request.actor
}

/** Whether this person reads the gauge, or works at the desk. */
export function mayFileFor(actor: Actor, gaugeId: string): boolean {
  return actor.role === 'colleague' || actor.role === 'coordinator' || actor.gauges.includes(gaugeId)
}
