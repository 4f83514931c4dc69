/** Response headers: nothing from any other host, no styles or programs written into the page, no framing. */
import helmet from '@fastify/helmet'
import type { FastifyInstance } from 'fastify'

/** @param isSecure  whether people reach the desk by https: then browsers are told to stay with it */
export async function secureHeaders(app: FastifyInstance, isSecure: boolean): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        // blob: a photo that was chosen on this device and has not left it.
        imgSrc: ["'self'", 'data:', 'blob:'],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        workerSrc: ["'self'", 'blob:'],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
    strictTransportSecurity: isSecure && { maxAge: 31_536_000, includeSubDomains: false },
    referrerPolicy: { policy: 'no-referrer' },
  })
}
