/** One thing that a sender's program can ask: the shapes that validate it, and that describe it to whoever reads. */
import type { KeyScope } from '@gaugewright/contract'
import type { z } from 'zod'
import type { Answer } from '../../app/answer.ts'
import type { Ports } from '../../ports/ports.ts'
import type { SenderKey } from '../../ports/senders.ts'

export interface OperationCall<A> {
  ask: A
  key: SenderKey
  idempotencyKey: string
  /** SHA-256 of the body as it came. */
  bodyHash: string
}

interface Described {
  /** As OpenAPI writes it: `/days/{day}/roll`, under the base of the interface. */
  path: string
  id: string
  scope: KeyScope
  summary: string
  description: string
}

/** Asked with a query and what stands in the path. */
export interface ReadOperation<S extends z.ZodObject = z.ZodObject> extends Described {
  method: 'get'
  /** Of the query and the path together. */
  ask: S
  answer: z.ZodType
  run: (ports: Ports, call: OperationCall<z.output<S>>) => Promise<Answer<unknown>>
}

/** Asked with a body and an idempotency key. */
export interface SendOperation<S extends z.ZodType = z.ZodType> extends Described {
  method: 'post'
  ask: S
  answer: z.ZodType
  /** An example of the body that holds in the demo. */
  example: unknown
  run: (ports: Ports, call: OperationCall<z.output<S>>) => Promise<Answer<unknown>>
}

export type Operation = ReadOperation | SendOperation

/** Keeps the type of the ask between schema and handler, and gives the operation to the list. */
export function reads<S extends z.ZodObject>(operation: ReadOperation<S>): ReadOperation {
  return operation as unknown as ReadOperation
}

export function sends<S extends z.ZodType>(operation: SendOperation<S>): SendOperation {
  return operation as unknown as SendOperation
}
