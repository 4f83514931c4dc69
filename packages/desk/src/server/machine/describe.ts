/** The OpenAPI 3.1 description of the machine interface, made from the shapes that validate. */
import { machineProblemSchema, rowsRefusedSchema } from '@gaugewright/contract'
import { z } from 'zod'
import { createDocument, type ZodOpenApiOperationObject, type ZodOpenApiPathsObject } from 'zod-openapi'
import type { Operation } from './operation.ts'
import { machineBase, operations } from './operations.ts'

const json = 'application/json'
const problem = (description: string) => ({ description, content: { [json]: { schema: machineProblemSchema } } })

export const idempotencyKeySchema = z
  .string()
  .regex(/^[\x21-\x7e]{1,200}$/)
  .meta({
    description:
      'Made by the sender, another one for each delivery. The same key with the same body is answered as the first time and adds nothing; with another body it is refused.',
    example: 'morning-2026-05-30',
  })

export function describeInterface(): ReturnType<typeof createDocument> {
  const paths: ZodOpenApiPathsObject = {}
  for (const operation of operations) {
    paths[operation.path] = { ...paths[operation.path], [operation.method]: described(operation) }
  }
  return createDocument({
    openapi: '3.1.0',
    info: {
      title: 'Gaugewright machine interface',
      version: '1.0.0',
      description:
        'Readings in, and what is accepted, found and urgent out. Send the header `Authorization: Bearer` with the key that the coordinator gave you. What is refused is told as a problem: a code, what was seen, and what to do. Fields are added over time, never taken away or given another meaning.',
      license: { name: 'Apache-2.0', identifier: 'Apache-2.0' },
    },
    servers: [{ url: machineBase }],
    security: [{ key: [] }],
    components: {
      securitySchemes: {
        key: {
          type: 'http',
          scheme: 'bearer',
          description: 'A key of `gaugewright key add`, or of the Settings screen.',
        },
      },
    },
    paths,
  })
}

function described(operation: Operation): ZodOpenApiOperationObject {
  const { id, summary, description, scope, answer } = operation
  const common = {
    operationId: id,
    summary,
    description: `${description} Needs a key for \`${scope}\`.`,
    responses: {
      '200': { description: 'Done.', content: { [json]: { schema: answer } } },
      '400': problem('Something asked does not fit its shape.'),
      '401': problem('No key, or one that opens nothing.'),
      '403': problem('The key is for something else.'),
      '429': problem('Too often; the answer says how long to wait.'),
    },
  }
  if (operation.method === 'post') {
    return {
      ...common,
      requestParams: { header: z.object({ 'idempotency-key': idempotencyKeySchema }) },
      requestBody: { required: true, content: { [json]: { schema: operation.ask, example: operation.example } } },
      responses: {
        ...common.responses,
        '422': {
          description: 'A row was refused and none taken, or the idempotency key came before with another body.',
          content: { [json]: { schema: z.union([rowsRefusedSchema, machineProblemSchema]) } },
        },
      },
    }
  }
  const { shape } = operation.ask
  const inPath = [...operation.path.matchAll(/\{(\w+)\}/g)].map((match) => match[1] as string)
  const pick = (isWanted: (name: string) => boolean) =>
    z.object(Object.fromEntries(Object.entries(shape).filter(([name]) => isWanted(name))))
  const isInPath = (name: string): boolean => inPath.includes(name)
  return {
    ...common,
    requestParams: {
      ...(inPath.length > 0 && { path: pick(isInPath) }),
      ...(Object.keys(shape).some((name) => !isInPath(name)) && { query: pick((name) => !isInPath(name)) }),
    },
    responses: { ...common.responses, '404': problem('There is no such day, or nothing in the ledger yet.') },
  }
}
