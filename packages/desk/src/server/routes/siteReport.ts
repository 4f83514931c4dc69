import { readSiteAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { siteReport } from '../../app/siteReport.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, requireRole } from '../access/requestActor.ts'
import { readAsk } from '../reply.ts'
import { replyWithPaper } from '../replyWithPaper.ts'

export function siteReportRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.siteReport.path, requireRole('observer'), async (request, reply) => {
    const ask = readAsk(readSiteAskSchema, request.query)
    return replyWithPaper(reply, ask.ok ? await siteReport(ports, { ...ask.value, actor: actorOf(request) }) : ask)
  })
}
