import { exportPeopleAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { doerFrom } from '../../app/access/doer.ts'
import { exportPeople } from '../../app/exportPeople.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf, requireRole } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

export function exportPeopleRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.exportPeople.path, requireRole('coordinator'), async (request, reply) => {
    const ask = readAsk(exportPeopleAskSchema, request.query)
    const file = ask.ok ? await exportPeople(ports, ask.value, doerFrom(actorOf(request))) : ask
    if (!file.ok) return replyWith(reply, file)
    return reply
      .header('cache-control', 'no-store')
      .header('content-disposition', `attachment; filename="${file.value.fileName}"`)
      .type(file.value.fileName.endsWith('.csv') ? 'text/csv; charset=utf-8' : 'text/vcard; charset=utf-8')
      .send(file.value.text)
  })
}
