/** The reading that a decision or a question is about, if it is still the current one of its gauge and day. */
import type { Reading } from '@gaugewright/science'
import type { Ledger, NetworkSettings } from '../ports/ledger.ts'
import { type Answer, answered, refused } from './answer.ts'

export interface CurrentReading {
  network: NetworkSettings
  reading: Reading
  /** What it corrects, when the observer corrected their own. */
  earlier: Reading[]
}

export async function currentReading(ledger: Ledger, readingId: string): Promise<Answer<CurrentReading>> {
  for (const network of await ledger.networks()) {
    const found = await ledger.reading(network.id, readingId)
    if (found === null) continue
    const { reading, superseded } = found
    const { gaugeId, lastDay } = reading
    const current = await ledger.readingsOfGauge(network.id, gaugeId, lastDay, lastDay)
    if (reading.id === readingId && current.some((row) => row.id === readingId)) {
      return answered({ network, reading, earlier: superseded })
    }
    return refused(
      'READING_SUPERSEDED',
      `reading ${readingId}, which its observer has corrected since`,
      'Open the day again and decide about the newer reading.',
    )
  }
  return refused(
    'READING_UNKNOWN',
    `no reading ${readingId}`,
    'Open the day again; the list shows every reading there is.',
  )
}
