import { askLinkAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { newSecret } from '../../app/access/secrets.ts'
import { askLink, LINK_MINUTES } from '../../app/askLink.ts'
import type { Ports } from '../../ports/ports.ts'
import { browserMark, giveBrowserMark } from '../access/cookies.ts'
import { limitAttempts, limitByMail } from '../access/limits.ts'
import { readAsk, replyWith } from '../reply.ts'

/** Answers take at least this long, so that the time does not tell whether a mail was written. */
const FLOOR_MS = 250

export function askLinkRoute(app: FastifyInstance, ports: Ports): void {
  const options = {
    config: { access: 'anyone' as const, audit: false as const, ...limitAttempts(app.limits) },
    preHandler: limitByMail(app, 'askLink', app.limits.linksPerMail),
  }
  app.post(routes.askLink.path, options, async (request, reply) => {
    const ask = readAsk(askLinkAskSchema, request.body)
    if (!ask.ok) return replyWith(reply, ask)
    // Kept while links may be waiting: whoever asks again may still open the first mail.
    const browser = browserMark(request) ?? newSecret()
    const deskUrl = app.publicUrl ?? `${request.protocol}://${request.headers.host}`
    const [answer] = await Promise.all([
      askLink(ports, { ...ask.value, browser, deskUrl }),
      new Promise((done) => setTimeout(done, FLOOR_MS)),
    ])
    giveBrowserMark(reply, browser, LINK_MINUTES * 60)
    return replyWith(reply, answer)
  })
}
