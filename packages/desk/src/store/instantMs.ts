/** Instants are stored as milliseconds since 1970 in UTC, and come back by formatInstant of the science. */
import { parseInstant } from '@gaugewright/science'
import { LedgerError } from '../ports/ledgerError.ts'

/** @throws {LedgerError} READING_NOT_VALID where the text is no instant with a zone */
export function instantMs(text: string): number {
  const ms = parseInstant(text)
  if (ms === null) {
    throw new LedgerError(
      'READING_NOT_VALID',
      `"${text}" is not an instant.`,
      'Give RFC 3339 with a zone, 2026-03-29T05:00:00Z.',
    )
  }
  return ms
}
