/**
 * Writes into the trail whatever was changed through the server, by whom. Use cases about people write their own lines;
 * readings and messages say themselves who brought them, and their routes say `audit: false`.
 */
import { routes } from '@gaugewright/contract'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { doerFrom, writeTrail } from '../../app/access/doer.ts'
import type { Ports } from '../../ports/ports.ts'
import './requestActor.ts'

const SAFE_METHODS = new Set(['GET', 'HEAD', 'OPTIONS'])
/** Asked with a body, but changes nothing. */
const asks = new Set(['whatIf', 'checkEntry'])

/** What a change is done to, where the body names it: the first of these fields. */
const subjects = ['personId', 'readingId', 'decisionId', 'reportId', 'gaugeId', 'id'] as const

const names = new Map(Object.entries(routes).map(([name, { method, path }]) => [`${method} ${path}`, name]))

export function recordChanges(app: FastifyInstance, ports: Ports): void {
  app.addHook('onSend', async (request, reply, payload) => {
    const { actor } = request
    if (actor === null || reply.statusCode >= 300 || SAFE_METHODS.has(request.method)) return payload
    const act = actOf(request)
    if (act === null) return payload
    await writeTrail(ports, doerFrom(actor), { act, subject: subjectOf(request) })
    return payload
  })
}

function actOf(request: FastifyRequest): string | null {
  const { config, url = '' } = request.routeOptions
  if (config.audit === false) return null
  if (typeof config.audit === 'string') return config.audit
  const name = names.get(`${request.method} ${url}`) ?? `${request.method} ${url}`
  return asks.has(name) ? null : name
}

function subjectOf({ body }: FastifyRequest): string | null {
  if (typeof body !== 'object' || body === null) return null
  for (const name of subjects) {
    const value = (body as Record<string, unknown>)[name]
    if (typeof value === 'string') return value.slice(0, 200)
  }
  return null
}
