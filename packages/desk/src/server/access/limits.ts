/** How often a door may be knocked at. Counted for each signed-in person, else for each address. */
import rateLimit, { type RateLimitOptions } from '@fastify/rate-limit'
import { ownerAtTheDesk } from '@gaugewright/contract'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { refused } from '../../app/answer.ts'
import { addressGroup } from './addressGroup.ts'

export interface Limits {
  /** Requests in ten seconds by somebody who is signed in. */
  known: number
  /** Requests in ten seconds from an address at which nobody is. */
  unknown: number
  /** Sign-in attempts in a minute from one address. */
  attemptsPerAddress: number
  /** Sign-in attempts in fifteen minutes for one mail address, from wherever. */
  attemptsPerMail: number
  /** Links in fifteen minutes for one mail address. */
  linksPerMail: number
  /** Offers in an hour from one address, and in a day from everywhere. */
  offersPerAddress: number
  offersPerDay: number
}

export const usualLimits: Limits = {
  known: 5000,
  unknown: 300,
  attemptsPerAddress: 10,
  attemptsPerMail: 20,
  linksPerMail: 3,
  offersPerAddress: 5,
  offersPerDay: 200,
}

/** How many and how long is nobody's business but in the answer to whoever came too often. */
const noHeaders = { 'x-ratelimit-limit': false, 'x-ratelimit-remaining': false, 'x-ratelimit-reset': false }

export class TooOften extends Error {
  readonly statusCode = 429
  readonly answer: ReturnType<typeof refused>

  constructor(waitMs: number) {
    super('too often')
    const seconds = Math.max(1, Math.ceil(waitMs / 1000))
    this.answer = refused('TOO_OFTEN', 'too many requests from here', `Wait ${seconds} seconds, then try again.`)
  }
}

export async function limitRequests(app: FastifyInstance, limits: Limits): Promise<void> {
  await app.register(rateLimit, {
    global: true,
    max: ({ actor }) => (actor === null ? limits.unknown : limits.known),
    timeWindow: 10_000,
    keyGenerator: whoAsks,
    addHeaders: noHeaders,
    addHeadersOnExceeding: noHeaders,
    errorResponseBuilder: (_request, { ttl }) => new TooOften(ttl),
    // A desk that opens at once for its owner has nobody to be kept away.
    allowList: ({ actor }) => actor === ownerAtTheDesk,
  })
}

/** For doors at which secrets can be guessed, in place of the usual limit. */
export function limitAttempts(limits: Limits): { rateLimit: RateLimitOptions } {
  const keyGenerator = ({ ip }: FastifyRequest): string => `attempts ${addressGroup(ip)}`
  return {
    rateLimit: { max: limits.attemptsPerAddress, timeWindow: 60_000, keyGenerator, allowList: () => false },
  }
}

/** By the mail address that was typed, so that many computers cannot share the guessing. */
export function limitByMail(app: FastifyInstance, what: string, max: number) {
  const count = app.createRateLimit({
    max,
    timeWindow: 15 * 60_000,
    keyGenerator: ({ body }) => `${what} ${mailIn(body)}`,
    allowList: () => false,
  })
  return async (request: FastifyRequest): Promise<void> => {
    const counted = await count(request)
    if (!counted.isAllowed && counted.isExceeded) throw new TooOften(counted.ttl)
  }
}

function mailIn(body: unknown): string {
  const mail = (body as { mail?: unknown } | null)?.mail
  return typeof mail === 'string' ? mail.trim().toLowerCase().slice(0, 254) : ''
}

function whoAsks({ actor, ip }: FastifyRequest): string {
  return actor === null ? `address ${addressGroup(ip)}` : `person ${actor.personId}`
}
