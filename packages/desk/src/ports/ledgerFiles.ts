/** A ledger as a file: copied while it is in use, put back, examined. Every method rejects with a LedgerError. */
export interface LedgerExamination {
  path: string
  bytes: number
  /** What the store itself says of its pages and indexes: `ok`, or the faults. */
  integrity: string
  schemaVersion: number
  counts: { name: string; rows: number }[]
}

export interface LedgerFiles {
  /** A whole, consistent copy, checked, made while others may be writing. LEDGER_EXISTS where `to` is there already. */
  backup: (path: string, to: string) => Promise<{ bytes: number }>
  /**
   * Puts a checked copy in the place of a ledger. What was there is kept beside it under a new name, and only with
   * `replace` (else LEDGER_EXISTS). LEDGER_BUSY while a desk has it open.
   */
  restore: (from: string, path: string, options: { replace: boolean }) => Promise<{ keptAs: string | null }>
  examine: (path: string) => Promise<LedgerExamination>
}
