/**
 * Keeps other web pages away from a desk on loopback: the Host header must name an allowed host (DNS rebinding), and
 * whatever changes the ledger must come as JSON from the desk's own pages (cross-site requests).
 */
import type { FastifyInstance } from 'fastify'
import { refused } from '../app/answer.ts'
import { replyWith } from './reply.ts'

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Posted to as a form, from any page or program; the address itself carries what proves the right to it. */
    takesForms?: boolean
  }
}

const SAFE_METHODS = new Set(['GET', 'HEAD', 'OPTIONS'])

/** @param allowedHosts  host names without port, lower case; IPv6 in brackets */
export function guardOrigin(app: FastifyInstance, allowedHosts: readonly string[]): void {
  const allowed = new Set(allowedHosts)
  app.addHook('onRequest', async (request, reply) => {
    const host = request.headers.host ?? ''
    if (!allowed.has(hostName(host))) {
      return replyWith(
        reply,
        refused('HOST_REFUSED', `the host name "${host.slice(0, 80)}"`, `Open the desk as http://${allowedHosts[0]}.`),
      )
    }
    // A signed link in a letter: mail programs post to it from anywhere, and it can do that one thing only.
    if (SAFE_METHODS.has(request.method) || request.routeOptions.config.takesForms === true) return
    const { origin } = request.headers
    const site = request.headers['sec-fetch-site']
    const isForeign = origin !== undefined && origin !== `http://${host}` && origin !== `https://${host}`
    if (isForeign || (site !== undefined && site !== 'same-origin' && site !== 'none')) {
      return replyWith(
        reply,
        refused('ORIGIN_REFUSED', `a request from ${origin ?? 'another site'}`, 'Work from the desk’s own pages.'),
      )
    }
    if (!/^application\/json\s*(;|$)/i.test(request.headers['content-type'] ?? '')) {
      return replyWith(
        reply,
        refused(
          'BODY_NOT_JSON',
          `the content type "${request.headers['content-type'] ?? 'none'}"`,
          'Send JSON, with the content type application/json.',
        ),
      )
    }
  })
}

/** `127.0.0.1:8137` → `127.0.0.1`; `[::1]:8137` → `[::1]`. */
function hostName(host: string): string {
  return host.toLowerCase().replace(/:\d+$/, '')
}
