import { routes, setRemindersAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { namedBy } from '../../app/access/doer.ts'
import { setReminders } from '../../app/setReminders.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, requireRole } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function setRemindersRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.setReminders.path, requireRole('coordinator'), async (request, reply) => {
    const ask = readAsk(setRemindersAskSchema, request.body)
    if (!ask.ok) return replyWith(reply, ask)
    return replyWith(reply, await setReminders(ports, { ...ask.value, by: namedBy(actorOf(request), ask.value.by).by }))
  })
}
