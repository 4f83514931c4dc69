/** A ledger as a file: copied while it is in use, put back, examined. Every method rejects with a LedgerError. */
export interface LedgerExamination {
  path: string
  bytes: number
  /** What the store itself says of its pages and indexes: `ok`, or the faults. */
  integrity: string
  schemaVersion: number
  counts: { name: string; rows: number }[]
  /** Names of photos whose file is not there, or not what it was. */
  photosLost: string[]
}

export interface LedgerFiles {
  /**
   * A whole, consistent copy, checked, made while others may be writing, with the photos in a folder beside it. LEDGER_EXISTS
   * where `to` is there already. Photos that the ledger has lost do not keep it from being copied: they are counted.
   */
  backup: (path: string, to: string) => Promise<{ bytes: number; photos: number; photosLost: number }>
  /**
   * Puts a checked copy, with its photos, in the place of a ledger. What was there is kept beside it under a new name, and only with
   * `replace` (else LEDGER_EXISTS). LEDGER_BUSY while a desk has it open.
   */
  restore: (from: string, path: string, options: { replace: boolean }) => Promise<{ keptAs: string | null }>
  examine: (path: string) => Promise<LedgerExamination>
}
