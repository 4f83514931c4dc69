import { routes, setRuleAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { namedBy } from '../../app/access/doer.ts'
import { setRule } from '../../app/setRule.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function setRuleRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.setRule.path, async (request, reply) => {
    const ask = readAsk(setRuleAskSchema, request.body)
    return replyWith(
      reply,
      ask.ok ? await setRule(ports, { ...ask.value, ...namedBy(actorOf(request), ask.value.by) }) : ask,
    )
  })
}
