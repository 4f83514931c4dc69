/** How every route answers: the value as JSON, or the problem with the status that fits it. */
import type { FastifyReply } from 'fastify'
import type { z } from 'zod'
import type { Answer } from '../app/answer.ts'
import { refused } from '../app/answer.ts'
import { statusOf } from './statusOf.ts'

export function replyWith<T>(reply: FastifyReply, answer: Answer<T>): FastifyReply {
  reply.header('cache-control', 'no-store')
  if (answer.ok) return reply.send(answer.value)
  return reply.code(statusOf(answer.problem.code)).send(answer.problem)
}

/** Read what was asked against its schema; the first thing that does not fit is named. */
export function readAsk<S extends z.ZodType>(schema: S, input: unknown): Answer<z.output<S>> {
  const read = schema.safeParse(input)
  if (read.success) return { ok: true, value: read.data }
  const issue = read.error.issues[0]
  const place = issue === undefined || issue.path.length === 0 ? 'the body' : issue.path.join('.')
  return refused(
    'ASK_NOT_VALID',
    `${place}: ${issue?.message ?? 'not readable'}`,
    'Send the fields of the interface as documented.',
  )
}
