/**
 * The desk's own work on what goes out, from when it opens until it closes: reminders at their hour, and every second a look
 * into the outbox. What fails here is told and tried again; it never stops the desk.
 */
import type { RemindPorts } from '../remind.ts'
import { remindWhenDue } from '../reminders/remindWhenDue.ts'
import { type SendPorts, sendDue } from './sendDue.ts'

const LOOK_MS = 1000
const REMIND_EVERY_MS = 30_000
/** How long closing waits for a mail server to answer. */
const CLOSE_MS = 5000

/** Each kind goes its own way: a mail server that does not answer holds up no webhook. */
const kinds = ['mail', 'webhook', 'file'] as const

/** Resolves soon after `signal` is aborted: a message that is under way has a few seconds to end. */
export async function runOutgoing(
  ports: SendPorts & RemindPorts,
  { signal, onFailure }: { signal: AbortSignal; onFailure: (error: Error) => void },
): Promise<void> {
  const giveUp = new AbortController()
  const breakOff = (): void => void setTimeout(() => giveUp.abort(), CLOSE_MS).unref()
  signal.addEventListener('abort', breakOff, { once: true })
  const every = async (ms: number, work: () => Promise<unknown>): Promise<void> => {
    while (!signal.aborted) {
      try {
        await work()
      } catch (error) {
        onFailure(error instanceof Error ? error : new Error(String(error)))
      }
      await pause(ms, signal)
    }
  }
  await Promise.all([
    every(REMIND_EVERY_MS, () => remindWhenDue(ports)),
    ...kinds.map((kind) => every(LOOK_MS, () => sendDue(ports, { kinds: [kind], signal, giveUp: giveUp.signal }))),
  ])
}

function pause(ms: number, signal: AbortSignal): Promise<void> {
  return new Promise((resume) => {
    const done = (): void => {
      clearTimeout(timer)
      signal.removeEventListener('abort', done)
      resume()
    }
    const timer = setTimeout(done, ms)
    signal.addEventListener('abort', done)
  })
}
