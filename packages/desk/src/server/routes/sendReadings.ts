import { routes, sendReadingsAskSchema } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom, writeTrail } from '../../app/access/doer.ts'
import { sendReadings } from '../../app/sendReadings.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

/** The trail names each reading that was sent, so that it leads from the reading to the person. */
export function sendReadingsRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.sendReadings.path, { config: { access: 'observer', audit: false } }, async (request, reply) => {
    const ask = readAsk(sendReadingsAskSchema, request.body)
    if (!ask.ok) return replyWith(reply, ask)
    const actor = actorOf(request)
    const sent = await sendReadings(ports, { ...ask.value, actor })
    if (sent.ok) {
      const lines = sent.value.received.map(({ id }) => ({ act: 'sendReadings', subject: id }))
      await Promise.all(lines.map((line) => writeTrail(ports, doerFrom(actor), line)))
    }
    return replyWith(reply, sent)
  })
}
