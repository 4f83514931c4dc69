import { instantMs } from '../instantMs.ts'

/** One spelling for each instant, always with milliseconds, so that instants compare as text. */
export function evenInstant(ms: number): string {
  return new Date(ms).toISOString()
}

/** @throws {LedgerError} READING_NOT_VALID where the text is no instant with a zone */
export function evenUtc(text: string): string {
  return evenInstant(instantMs(text))
}
