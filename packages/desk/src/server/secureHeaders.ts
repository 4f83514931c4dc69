/** Response headers: nothing from any other host, no framing. Styles may stand in the page, which the components need. */
import helmet from '@fastify/helmet'
import type { FastifyInstance } from 'fastify'

export async function secureHeaders(app: FastifyInstance): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'", "'unsafe-inline'"],
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
