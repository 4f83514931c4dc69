import type { Problem } from '@gaugewright/contract'
import type { MyWords } from '../../words/myWords.ts'

/** What the desk refused, in the observer's language where there are words for it. */
export function sayProblem({ code, seen, advice }: Problem, { problems }: MyWords): string {
  return code in problems ? problems[code as keyof typeof problems] : `${seen}. ${advice}`
}
