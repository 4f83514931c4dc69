/** Instants are stored as milliseconds since 1970 in UTC, and come back as RFC 3339 without empty milliseconds. */
import { LedgerError } from '../ports/ledgerError.ts'

export function instantText(ms: number): string {
  return new Date(ms).toISOString().replace('.000Z', 'Z')
}

/** @throws {LedgerError} READING_NOT_VALID where the text is no instant with a zone */
export function instantMs(text: string): number {
  const ms = /(Z|[+-]\d\d:\d\d)$/.test(text) ? Date.parse(text) : Number.NaN
  if (Number.isNaN(ms)) {
    throw new LedgerError(
      'READING_NOT_VALID',
      `"${text}" is not an instant.`,
      'Give RFC 3339 with a zone, 2026-03-29T05:00:00Z.',
    )
  }
  return ms
}
