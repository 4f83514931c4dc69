/** The two cookies of the desk: the session, and the mark of the browser that asked for a link. Scripts see neither. */
import type { CookieSerializeOptions } from '@fastify/cookie'
import type { FastifyReply, FastifyRequest } from 'fastify'
import type { Limits } from './limits.ts'

const SESSION = 'gaugewright-session'
const BROWSER = 'gaugewright-asked'

declare module 'fastify' {
  interface FastifyInstance {
    /** Whether people reach the desk by https. */
    isSecure: boolean
    limits: Limits
    publicUrl: string | undefined
  }
}

/** With https the browser itself holds the name to this host and to encryption (cookie prefixes, RFC 6265bis). */
function named(name: string, isSecure: boolean): string {
  return isSecure ? `__Host-${name}` : name
}

function options(isSecure: boolean, maxAgeS: number): CookieSerializeOptions {
  return { path: '/', httpOnly: true, sameSite: 'strict', secure: isSecure, maxAge: maxAgeS }
}

export function sessionSecret(request: FastifyRequest): string | undefined {
  return request.cookies[named(SESSION, request.server.isSecure)]
}

export function giveSession(reply: FastifyReply, secret: string, maxAgeS: number): void {
  const { isSecure } = reply.server
  reply.setCookie(named(SESSION, isSecure), secret, options(isSecure, maxAgeS))
  takeBrowserMark(reply)
}

export function takeSession(reply: FastifyReply): void {
  const { isSecure } = reply.server
  reply.clearCookie(named(SESSION, isSecure), options(isSecure, 0))
}

export function browserMark(request: FastifyRequest): string | undefined {
  return request.cookies[named(BROWSER, request.server.isSecure)]
}

export function giveBrowserMark(reply: FastifyReply, secret: string, maxAgeS: number): void {
  const { isSecure } = reply.server
  reply.setCookie(named(BROWSER, isSecure), secret, options(isSecure, maxAgeS))
}

function takeBrowserMark(reply: FastifyReply): void {
  const { isSecure } = reply.server
  reply.clearCookie(named(BROWSER, isSecure), options(isSecure, 0))
}
