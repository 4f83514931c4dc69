import { readSiteAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { sendSiteReport } from '../../app/sendSiteReport.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { deskUrlOf } from '../deskUrlOf.ts'
import { readAsk, replyWith } from '../reply.ts'

export function sendSiteReportRoute(app: FastifyInstance, ports: Ports): void {
  app.post(routes.sendSiteReport.path, { config: { access: 'colleague', audit: false } }, async (request, reply) => {
    const ask = readAsk(readSiteAskSchema, request.body)
    if (!ask.ok) return replyWith(reply, ask)
    const actor = actorOf(request)
    const deskUrl = deskUrlOf(app, request)
    return replyWith(reply, await sendSiteReport(ports, { ...ask.value, actor, deskUrl }, doerFrom(actor)))
  })
}
