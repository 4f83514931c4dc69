/**
 * The door for programs: `/api/v1`. A key is asked for before a body is read; each key may come so often, and so may each
 * address without one. What is sent needs an idempotency key.
 */
import type { BulkAnswer } from '@gaugewright/contract'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { refused } from '../../app/answer.ts'
import { keyBehind } from '../../app/keyBehind.ts'
import { digestOf } from '../../app/machine/keys.ts'
import type { Ports } from '../../ports/ports.ts'
import type { SenderKey } from '../../ports/senders.ts'
import { addressGroup } from '../access/addressGroup.ts'
import { TooOften } from '../access/limits.ts'
import { readAsk, replyWith } from '../reply.ts'
import { describeInterface, idempotencyKeySchema } from './describe.ts'
import { drawPage } from './drawPage.ts'
import type { Operation } from './operation.ts'
import { machineBase, operations } from './operations.ts'
import { pageStyle } from './pageStyle.ts'

/** Ten thousand readings with long remarks, or two million characters of SHEF. */
const BODY_LIMIT_BYTES = 16 * 1024 * 1024
const WINDOW_MS = 10_000
const CALLS_A_KEY = 600
const WRONG_KEYS_AN_ADDRESS = 20

declare module 'fastify' {
  interface FastifyRequest {
    senderKey: SenderKey | null
    bodyHash: string
  }
}

export function machineDoor(app: FastifyInstance, ports: Ports): void {
  app.decorateRequest('senderKey', null)
  app.decorateRequest('bodyHash', '')
  addDescription(app)
  const callsOfKey = app.createRateLimit({
    max: CALLS_A_KEY,
    timeWindow: WINDOW_MS,
    keyGenerator: ({ senderKey }) => `sender ${senderKey?.id}`,
    allowList: () => false,
  })
  const wrongKeys = app.createRateLimit({
    max: WRONG_KEYS_AN_ADDRESS,
    timeWindow: WINDOW_MS,
    keyGenerator: ({ ip }) => `wrong keys ${addressGroup(ip)}`,
    allowList: () => false,
  })
  const inTime = async (count: typeof callsOfKey, request: FastifyRequest): Promise<void> => {
    const counted = await count(request)
    if (!counted.isAllowed && counted.isExceeded) throw new TooOften(counted.ttl)
  }

  for (const operation of operations) {
    app.route({
      method: operation.method === 'get' ? 'GET' : 'POST',
      url: `${machineBase}${operation.path.replaceAll(/\{(\w+)\}/g, ':$1')}`,
      bodyLimit: BODY_LIMIT_BYTES,
      config: { access: 'anyone', audit: false, rateLimit: false },
      onRequest: async (request, reply) => {
        const key = await keyBehind(ports, request.headers.authorization, operation.scope)
        if (!key.ok) {
          await inTime(wrongKeys, request)
          return replyWith(reply, key)
        }
        request.senderKey = key.value
        await inTime(callsOfKey, request)
      },
      handler: async (request, reply) => await answerCall(ports, operation, request, reply),
    })
  }
}

async function answerCall(ports: Ports, operation: Operation, request: FastifyRequest, reply: FastifyReply) {
  const key = request.senderKey
  if (key === null) throw new Error(`${request.url} was let through without a key`)
  if (operation.method === 'get') {
    const ask = readAsk(operation.ask, { ...(request.query as object), ...(request.params as object) })
    if (!ask.ok) return replyWith(reply, ask)
    return replyWith(reply, await operation.run(ports, { ask: ask.value, key, idempotencyKey: '', bodyHash: '' }))
  }
  const idempotency = idempotencyKeySchema.safeParse(request.headers['idempotency-key'])
  if (!idempotency.success) {
    return replyWith(
      reply,
      refused(
        'IDEMPOTENCY_KEY_MISSING',
        'no header Idempotency-Key of 1 to 200 plain characters',
        'Send one, another for each delivery, so that what is sent again is taken once.',
      ),
    )
  }
  const ask = readAsk(operation.ask, request.body)
  if (!ask.ok) return replyWith(reply, ask)
  const bodyHash = digestOf(`${operation.id} ${JSON.stringify(request.body)}`)
  const answer = await operation.run(ports, { ask: ask.value, key, idempotencyKey: idempotency.data, bodyHash })
  if (!answer.ok) return replyWith(reply, answer)
  const bulk = answer.value as BulkAnswer
  if (bulk.taken) return replyWith(reply, answer)
  const { problem } = refused(
    'ROWS_REFUSED',
    `${bulk.refused} of ${bulk.rows.length} rows; none was taken`,
    'Mend or leave out the refused rows, or send keepGood; the idempotency key may be used again.',
  )
  return reply
    .header('cache-control', 'no-store')
    .code(422)
    .send({ ...problem, answer: bulk })
}

/** The description, and a page that reads it to people; neither needs a key nor tells anything of the network. */
function addDescription(app: FastifyInstance): void {
  const description = describeInterface()
  const page = drawPage(description)
  const open = { config: { access: 'anyone' as const } }
  app.get(`${machineBase}/openapi.json`, open, async (_request, reply) =>
    reply.header('cache-control', 'no-cache').send(description),
  )
  app.get(machineBase, open, async (_request, reply) =>
    reply.header('cache-control', 'no-cache').type('text/html; charset=utf-8').send(page),
  )
  app.get(`${machineBase}/page.css`, open, async (_request, reply) =>
    reply.header('cache-control', 'no-cache').type('text/css; charset=utf-8').send(pageStyle),
  )
}
