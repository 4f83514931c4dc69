import { addPhotoAskSchema, photoLimits, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { addPhoto } from '../../app/addPhoto.ts'
import type { Ports } from '../../ports/ports.ts'
import { actorOf } from '../access/requestActor.ts'
import { readAsk, replyWith } from '../reply.ts'

/** A photo in base64 takes four characters for three bytes; the rest of the body is small. */
const BODY_LIMIT_BYTES = Math.ceil(photoLimits.bytes / 3) * 4 + 4096
/** Drawing a photo anew costs the desk tens of milliseconds: one a second is more than a person takes. */
const perMinute = { max: 60, timeWindow: 60_000 }

export function addPhotoRoute(app: FastifyInstance, ports: Ports): void {
  app.post(
    routes.addPhoto.path,
    { bodyLimit: BODY_LIMIT_BYTES, config: { access: 'observer', audit: 'addPhoto', rateLimit: perMinute } },
    async (request, reply) => {
      const ask = readAsk(addPhotoAskSchema, request.body)
      return replyWith(reply, ask.ok ? await addPhoto(ports, { ...ask.value, actor: actorOf(request) }) : ask)
    },
  )
}
