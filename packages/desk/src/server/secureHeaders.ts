/** Response headers: nothing from any other host, no styles or programs written into the page, no framing. */
import helmet from '@fastify/helmet'
import type { FastifyInstance } from 'fastify'

export async function secureHeaders(app: FastifyInstance): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'data:'],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        workerSrc: ["'self'", 'blob:'],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
    // The desk speaks plain HTTP on loopback.
    strictTransportSecurity: false,
    referrerPolicy: { policy: 'no-referrer' },
  })
}
