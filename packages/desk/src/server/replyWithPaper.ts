/** A printable page: it runs nothing, asks nobody, and its styles are its own. */
import type { FastifyReply } from 'fastify'
import type { Answer } from '../app/answer.ts'
import { replyWith } from './reply.ts'

export function replyWithPaper(reply: FastifyReply, answer: Answer<{ html: string }>): FastifyReply {
  if (!answer.ok) return replyWith(reply, answer)
  return reply
    .header('cache-control', 'no-store')
    .header(
      'content-security-policy',
      "default-src 'none'; style-src 'unsafe-inline'; img-src data:; frame-ancestors 'self'; base-uri 'none'; form-action 'none'",
    )
    .header('x-frame-options', 'SAMEORIGIN')
    .type('text/html; charset=utf-8')
    .send(answer.value.html)
}
