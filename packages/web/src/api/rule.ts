/** The rule: read, set, and looked at ahead of time, which may take the desk a while. */
import type { Rule, RulePreview, RulePreviewLine, SetRuleAsk } from '@gaugewright/contract'
import { routes } from '@gaugewright/contract'
import { queryOptions } from '@tanstack/react-query'
import { askDesk, reach, readAnswer } from './askDesk.ts'
import { ProblemError } from './problemError.ts'
import { readLines } from './readLines.ts'

export const ruleKey = ['rule'] as const

export const ruleQuery = queryOptions({
  queryKey: ruleKey,
  queryFn: ({ signal }) => askDesk<Rule>(routes.readRule.path, undefined, signal),
})

/** Set the rule; answers with it and all that was set before. @throws {ProblemError} */
export function postRule(ask: SetRuleAsk): Promise<Rule> {
  return askDesk<Rule>(routes.setRule.path, ask)
}

export type Progress = { done: number; total: number }

/**
 * What the rule would do. Tells how far the desk is while it works.
 * @param days  the last so many observing days; null leaves it to the desk
 * @throws {ProblemError}
 */
export async function askRulePreview(
  days: number | null,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<RulePreview> {
  const path = days === null ? routes.previewRule.path : `${routes.previewRule.path}?days=${days}`
  const response = await reach(path, { headers: { accept: 'application/x-ndjson, application/json' }, signal })
  const isReady = !response.headers.get('content-type')?.includes('ndjson')
  if (isReady || response.body === null) return readAnswer<RulePreview>(response, path)
  try {
    for await (const text of readLines(response.body)) {
      const line = JSON.parse(text) as RulePreviewLine
      if ('progress' in line) onProgress(line.progress)
      else if ('preview' in line) return line.preview
      else throw new ProblemError(line.problem)
    }
  } catch (error) {
    if (error instanceof ProblemError || signal.aborted) throw error
  }
  // The desk went away in the middle of its answer.
  throw new ProblemError({ code: 'DESK_UNREACHABLE', seen: path, advice: '' })
}
