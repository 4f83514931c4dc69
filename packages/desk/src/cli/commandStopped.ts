/** Thrown by a command to end with one line and an exit code: 1 failed, 2 bad usage. */
import type { Problem } from '@gaugewright/contract'
import type { Answer } from '../app/answer.ts'

export class CommandStopped extends Error {
  readonly exitCode: 1 | 2
  readonly line: string

  constructor(problem: Problem, exitCode: 1 | 2 = 1) {
    const line = problemLine(problem)
    super(line)
    this.name = 'CommandStopped'
    this.exitCode = exitCode
    this.line = line
  }
}

/** `CODE  what was seen. What to do.` on one line. */
export function problemLine(problem: Problem): string {
  const stop = /[.!?]$/.test(problem.seen) ? '' : '.'
  return `${problem.code}  ${problem.seen}${stop} ${problem.advice}`.replace(/[\r\n]+/g, ' ')
}

/** The value of an answer. @throws {CommandStopped} with its problem */
export function valueFrom<T>(answer: Answer<T>): T {
  if (answer.ok) return answer.value
  throw new CommandStopped(answer.problem)
}
