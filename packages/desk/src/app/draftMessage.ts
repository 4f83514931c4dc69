/** The kind letter that asks an observer to look once more, ready to copy. It shows no neighbour's amount. */
import type { DraftMessage } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { evidenceForReading } from './evidenceForReading.ts'

export interface DraftMessageAsk {
  readingId: string
}

export async function draftMessage(ports: Pick<Ports, 'ledger'>, ask: DraftMessageAsk): Promise<Answer<DraftMessage>> {
  const evidence = await evidenceForReading(ports, ask)
  if (!evidence.ok) return evidence
  const { readingId, observerName, message } = evidence.value
  return answered({ readingId, observerName, message })
}
