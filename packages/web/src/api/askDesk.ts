import type { Problem } from '@gaugewright/contract'
import { ProblemError } from './problemError.ts'

/**
 * Ask the desk: GET, or POST when a body is given.
 * @throws {ProblemError} the desk's own problem; DESK_UNREACHABLE when there is no answer; DESK_ANSWER_UNREADABLE when
 * the answer is not JSON. Words for these two are in the messages, so their advice is empty here.
 */
export async function askDesk<Answer>(path: string, body?: unknown, signal?: AbortSignal): Promise<Answer> {
  const init: RequestInit = { headers: { accept: 'application/json' } }
  if (signal) init.signal = signal
  if (body !== undefined) {
    init.method = 'POST'
    init.headers = { accept: 'application/json', 'content-type': 'application/json' }
    init.body = JSON.stringify(body)
  }
  return readAnswer<Answer>(await reach(path, init), path)
}

/** @throws {ProblemError} DESK_UNREACHABLE; what was aborted is thrown as it is */
export async function reach(path: string, init: RequestInit): Promise<Response> {
  try {
    return await fetch(path, init)
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') throw error
    throw new ProblemError({ code: 'DESK_UNREACHABLE', seen: path, advice: '' })
  }
}

/** @throws {ProblemError} the desk's own problem, or DESK_ANSWER_UNREADABLE */
export async function readAnswer<Answer>(response: Response, path: string): Promise<Answer> {
  const answer = await response.json().catch(() => undefined)
  if (answer === undefined)
    throw new ProblemError({ code: 'DESK_ANSWER_UNREADABLE', seen: `${response.status} ${path}`, advice: '' })
  if (!response.ok) throw new ProblemError(readProblem(answer, response.status, path))
  return answer as Answer
}

function readProblem(answer: unknown, status: number, path: string): Problem {
  const problem = answer as Partial<Problem>
  if (typeof problem?.code === 'string')
    return { code: problem.code, seen: problem.seen ?? '', advice: problem.advice ?? '' }
  return { code: 'DESK_ANSWER_UNREADABLE', seen: `${status} ${path}`, advice: '' }
}
