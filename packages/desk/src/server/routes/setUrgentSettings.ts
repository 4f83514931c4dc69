import { routes, setUrgentSettingsAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { namedBy } from '../../app/access/doer.ts'
import { setUrgentSettings } from '../../app/setUrgentSettings.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function setUrgentSettingsRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.setUrgentSettings.path, { config: { access: 'coordinator' } }, async (request, reply) => {
    const ask = readAsk(setUrgentSettingsAskSchema, request.body)
    const who = ask.ok ? namedBy(actorOf(request), ask.value.by) : null
    return replyWith(reply, ask.ok ? await setUrgentSettings(ports, { ...ask.value, ...who }) : ask)
  })
}
