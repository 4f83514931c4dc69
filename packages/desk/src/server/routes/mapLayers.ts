import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { mapLayers } from '../../app/mapLayers.ts'
import type { Ports } from '../../ports/ports.ts'
import { replyWith } from '../reply.ts'

export function mapLayersRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.mapLayers.path, async (_request, reply) => replyWith(reply, await mapLayers(ports)))
}
