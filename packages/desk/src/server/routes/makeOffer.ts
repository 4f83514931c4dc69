import { makeOfferAskSchema, routes } from '@gaugewright/contract'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { makeOffer } from '../../app/makeOffer.ts'
import { UsedTickets } from '../../app/people/offerTicket.ts'
import type { Ports } from '../../ports/ports.ts'
import { addressGroup } from '../access/addressGroup.ts'
import { TooOften } from '../access/limits.ts'
import { deskUrlOf } from '../deskUrlOf.ts'
import { readAsk, replyWith } from '../reply.ts'

const BODY_LIMIT_BYTES = 16 * 1024
const HOUR_MS = 3_600_000

/** Two limits: from one address, and in all, so that a flood from everywhere ends too. */
export function makeOfferRoute(app: FastifyInstance, ports: Ports): void {
  const used = new UsedTickets()
  const everybody = app.createRateLimit({
    max: app.limits.offersPerDay,
    timeWindow: 24 * HOUR_MS,
    keyGenerator: () => 'offers of everybody',
    allowList: () => false,
  })
  const oneAddress = {
    max: app.limits.offersPerAddress,
    timeWindow: HOUR_MS,
    keyGenerator: ({ ip }: FastifyRequest) => `offers ${addressGroup(ip)}`,
    allowList: () => false,
  }
  const options = {
    bodyLimit: BODY_LIMIT_BYTES,
    config: { access: 'anyone' as const, audit: false as const, rateLimit: oneAddress },
  }
  app.post(routes.makeOffer.path, options, async (request, reply) => {
    const ask = readAsk(makeOfferAskSchema, request.body)
    if (!ask.ok) return replyWith(reply, ask)
    const counted = await everybody(request)
    if (!counted.isAllowed && counted.isExceeded) throw new TooOften(counted.ttl)
    return replyWith(reply, await makeOffer(ports, { ...ask.value, deskUrl: deskUrlOf(app, request), used }))
  })
}
