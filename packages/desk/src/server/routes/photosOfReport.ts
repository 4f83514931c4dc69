import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { photosOfReport } from '../../app/photosOfReport.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

export function photosOfReportRoute(app: FastifyInstance, ports: Ports): void {
  app.get<{ Params: { report: string } }>(
    routes.photosOfReport.path,
    requireRole('viewer'),
    async ({ params }, reply) => replyWith(reply, await photosOfReport(ports, { reportId: params.report })),
  )
}
