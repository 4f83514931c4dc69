import { routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { readPhoto } from '../../app/readPhoto.ts'
import type { Ports } from '../../ports/ports.ts'
import { requireRole } from '../access/requestActor.ts'
import { replyWith } from '../reply.ts'

/** A picture for the desk's own people: never taken for anything else, kept by no proxy, saved under its own name. */
export function photoRoute(app: FastifyInstance, ports: Ports): void {
  app.get<{ Params: { sha256: string } }>(routes.photo.path, requireRole('viewer'), async ({ params }, reply) => {
    const answer = await readPhoto(ports, params)
    if (!answer.ok) return replyWith(reply, answer)
    return reply
      .header('content-type', 'image/jpeg')
      .header('content-disposition', `attachment; filename="photo-${params.sha256.slice(0, 12)}.jpg"`)
      .header('x-content-type-options', 'nosniff')
      .header('content-security-policy', "default-src 'none'; sandbox")
      .header('cache-control', 'private, max-age=31536000, immutable')
      .send(Buffer.from(answer.value.jpeg))
  })
}
