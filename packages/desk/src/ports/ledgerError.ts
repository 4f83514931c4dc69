import type { Problem } from '@gaugewright/contract'

export type LedgerCode =
  | 'LEDGER_NOT_FOUND'
  | 'LEDGER_EXISTS'
  | 'LEDGER_NOT_OURS'
  | 'LEDGER_NEWER'
  | 'LEDGER_DAMAGED'
  | 'LEDGER_BUSY'
  | 'LEDGER_CANNOT_WRITE'
  | 'NETWORK_UNKNOWN'
  | 'LEDGER_GAUGE_UNKNOWN'
  | 'READING_NOT_VALID'
  | 'RULE_NOT_VALID'
  | 'ABSENCE_NOT_VALID'
  | 'READING_UNKNOWN'
  | 'ALREADY_SUPERSEDED'
  | 'ID_TAKEN'
  | 'KEY_UNKNOWN'
  | 'MAIL_TAKEN'
  | 'PERSON_UNKNOWN'
  | 'URGENT_ID_TAKEN'
  | 'URGENT_UNKNOWN'
  | 'PHOTO_STORE_FULL'
  | 'PHOTOS_TOO_MANY'
  | 'PHOTO_FILE_GONE'

/** The ledger could not do as asked, and has changed nothing. A door shows `problem` as it is. */
export class LedgerError extends Error {
  readonly problem: Problem & { code: LedgerCode }

  constructor(code: LedgerCode, seen: string, advice: string) {
    super(`${code}: ${seen} ${advice}`)
    this.name = 'LedgerError'
    this.problem = { code, seen, advice }
  }
}
