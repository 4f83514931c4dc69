/**
 * Works out ahead of time what the first look at a day asks for: the review, the field, and the first doubt's evidence; and
 * judges the day before, which is the next to be looked at. Nothing is decided on that one: its rule waits for a look.
 */
import type { Ports } from '../ports/ports.ts'
import { evidenceForReading } from './evidenceForReading.ts'
import { paramsOfMorning } from './field/fieldOfMorning.ts'
import { fieldForDay } from './fieldForDay.ts'
import { judgedMorning } from './morning/judgedMorning.ts'
import { loadMorning } from './morning/loadMorning.ts'
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
  const { docket, previousDay } = reviewed.value
  const first = docket[0]
  const steps = [
    () => fieldForDay(ports, { day: reviewed.value.day }),
    () => (first === undefined ? null : evidenceForReading(ports, { readingId: first.readingId })),
    () => (previousDay === null ? null : judgeDay(ports, previousDay, signal)),
  ]
  for (const step of steps) {
    // Whoever asks meanwhile goes first.
    await new Promise((resume) => setImmediate(resume))
    if (signal.aborted) return
    await step()
  }
}

async function judgeDay({ ledger }: Ports, day: string, signal: AbortSignal): Promise<void> {
  const loaded = await loadMorning(ledger, day)
  if (!loaded.ok) return
  paramsOfMorning(ledger, await judgedMorning(ledger, loaded.value, signal))
}
