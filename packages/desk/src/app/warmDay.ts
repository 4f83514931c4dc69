/** Works out ahead of time what the first look at a day asks for: the review, the field, and the first doubt's evidence. */
import type { Ports } from '../ports/ports.ts'
import { evidenceForReading } from './evidenceForReading.ts'
import { fieldForDay } from './fieldForDay.ts'
import { reviewDay } from './reviewDay.ts'

export interface WarmDayAsk {
  /** ISO date, or `latest`. */
  day: string
  signal: AbortSignal
}

/** Problems are left to whoever looks: they are told then. */
export async function warmDay(ports: Ports, { day, signal }: WarmDayAsk): Promise<void> {
  const reviewed = await reviewDay(ports, { day, signal })
  if (!reviewed.ok) return
  const first = reviewed.value.docket[0]
  const steps = [
    () => fieldForDay(ports, { day: reviewed.value.day }),
    () => (first === undefined ? null : evidenceForReading(ports, { readingId: first.readingId })),
  ]
  for (const step of steps) {
    // Whoever asks meanwhile goes first.
    await new Promise((resume) => setImmediate(resume))
    if (signal.aborted) return
    await step()
  }
}
