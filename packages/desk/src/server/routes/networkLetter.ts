import { networkLetterAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { networkLetter } from '../../app/networkLetter.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { readAsk } from '../reply.ts'
import { replyWithPaper } from '../replyWithPaper.ts'

export function networkLetterRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.networkLetter.path, requireRole('viewer'), async (request, reply) => {
    const ask = readAsk(networkLetterAskSchema, request.query)
    return replyWithPaper(reply, ask.ok ? await networkLetter(ports, ask.value) : ask)
  })
}
