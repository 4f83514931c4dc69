import { chooseRemindersAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { namedBy } from '../../app/access/doer.ts'
import { chooseReminders } from '../../app/chooseReminders.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, requireRole } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function chooseRemindersRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.chooseReminders.path, requireRole('coordinator'), async (request, reply) => {
    const ask = readAsk(chooseRemindersAskSchema, request.body)
    if (!ask.ok) return replyWith(reply, ask)
    return replyWith(
      reply,
      await chooseReminders(ports, { ...ask.value, by: namedBy(actorOf(request), ask.value.by).by }),
    )
  })
}
