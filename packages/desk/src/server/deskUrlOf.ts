import type { FastifyInstance, FastifyRequest } from 'fastify'

/** Where people reach this desk, without a slash at its end: as it was told, else as it was asked. */
export function deskUrlOf(app: FastifyInstance, request: FastifyRequest): string {
  return app.publicUrl ?? `${request.protocol}://${request.headers.host}`
}
