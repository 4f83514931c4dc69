import { fileUrgentAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { refused } from '../../app/answer.ts'
import { fileUrgent } from '../../app/fileUrgent.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, mayFileFor } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

/** Whoever works at the desk files for others too (a telephone call), under the name of who told. */
export function fileUrgentRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.fileUrgent.path, { config: { access: 'observer', audit: false } }, async (request, reply) => {
    const ask = readAsk(fileUrgentAskSchema, request.body)
    if (!ask.ok) return replyWith(reply, ask)
    const actor = actorOf(request)
    const { where } = ask.value
    if (where.kind === 'gauge' && !mayFileFor(actor, where.gaugeId)) {
      return replyWith(
        reply,
        refused('GAUGE_NOT_YOURS', `the gauge "${where.gaugeId}"`, 'Choose your own gauge, or mark the place.'),
      )
    }
    const isOwn = actor.role === 'observer' || actor.role === 'viewer'
    const who = isOwn ? { by: actor.name, byPersonId: actor.personId } : { byPersonId: null }
    const onTrouble = reply.server.getDecorator<(error: unknown) => void>('onFailure')
    return replyWith(reply, await fileUrgent(ports, { ...ask.value, ...who, onTrouble }))
  })
}
