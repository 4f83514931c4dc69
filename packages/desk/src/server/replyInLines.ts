/**
 * Answers work that may take a while: as plain JSON where it is done before anything was told, else as lines of JSON, what
 * is told first and the answer last. The work is stopped when nobody listens any more.
 */
import { PassThrough } from 'node:stream'
import type { FastifyReply } from 'fastify'
import type { Answer } from '../app/answer.ts'
import { LedgerError } from '../ports/ledgerError.ts'
import { replyWith } from './reply.ts'

export type LongWork<Line> = (
  tell: (line: Line) => void,
  signal: AbortSignal,
) => Promise<{ answer: Answer<unknown>; last: Line }>

export async function replyInLines<Line>(reply: FastifyReply, work: LongWork<Line>): Promise<FastifyReply> {
  const stopped = new AbortController()
  reply.raw.once('close', () => stopped.abort(new Error('nobody listens any more')))
  const lines = new PassThrough()
  let isBegun = false
  const tell = (line: Line): void => {
    if (!isBegun) {
      isBegun = true
      reply.header('cache-control', 'no-store').type('application/x-ndjson').send(lines)
    }
    lines.write(`${JSON.stringify(line)}\n`)
  }
  try {
    const { answer, last } = await work(tell, stopped.signal)
    if (!isBegun) return replyWith(reply, answer)
    tell(last)
  } catch (error) {
    if (!isBegun) throw error
    if (!stopped.signal.aborted) {
      if (!(error instanceof LedgerError)) tellFailure(reply, error)
      lines.write(`${JSON.stringify({ problem: problemFrom(error) })}\n`)
    }
  }
  lines.end()
  return reply
}

/** The headers are gone, so that the server's own handler of errors is out of reach: it is told all the same. */
function tellFailure(reply: FastifyReply, error: unknown): void {
  const told = reply.server.getDecorator<(error: Error) => void>('onFailure')
  told(error instanceof Error ? error : new Error(String(error)))
}

/** As the server tells failures: what is ours to mend is not explained to the asker. */
function problemFrom(error: unknown): { code: string; seen: string; advice: string } {
  if (error instanceof LedgerError) return error.problem
  return {
    code: 'DESK_FAILED',
    seen: 'something failed inside the desk; nothing was changed',
    advice: 'Try again; if it stays, run "gaugewright doctor".',
  }
}
