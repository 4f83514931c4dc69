import { previewRuleAskSchema, type RulePreviewLine, routes } from '@gaugewright/contract'
import type { FastifyInstance } from 'fastify'
import { previewRule } from '../../app/previewRule.ts'
import type { Ports } from '../../ports/ports.ts'
import { readAsk, replyWith } from '../reply.ts'
import { replyInLines } from '../replyInLines.ts'

export function previewRuleRoute(app: FastifyInstance, ports: Ports): void {
  app.get(routes.previewRule.path, async (request, reply) => {
    const ask = readAsk(previewRuleAskSchema, request.query)
    if (!ask.ok) return replyWith(reply, ask)
    return replyInLines<RulePreviewLine>(reply, async (tell, signal) => {
      const onProgress = (done: number, total: number): void => tell({ progress: { done, total } })
      const answer = await previewRule(ports, { ...ask.value, signal, onProgress })
      return answer.ok ? { answer, last: { preview: answer.value } } : { answer, last: { problem: answer.problem } }
    })
  })
}
