import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { readRule } from '../../app/readRule.ts'
import type { Ports } from '../../ports/ports.ts'
import { replyWith } from '../reply.ts'

export function readRuleRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.readRule.path, async (_request, reply) => replyWith(reply, await readRule(ports)))
}
