/** A filing or a photo as the phone keeps it. */
import type { FileUrgentInput, Problem } from '@gaugewright/contract'

interface Kept {
  /** Order of making. Sent in this order, photos after all filings. */
  seq: number
  /** The id of the first filing: everything about one report. */
  reportId: string
  madeAtUtc: string
  state: 'waiting' | 'received' | 'refused'
  receivedAtUtc: string | null
  problem: Problem | null
}

export interface KeptFiling extends Kept {
  what: 'filing'
  filing: FileUrgentInput
}

export interface KeptPhoto extends Kept {
  what: 'photo'
  /** A JPEG drawn anew on the phone; null once the desk has it. */
  jpeg: Blob | null
  /** The desk's name of it, once it has it. */
  sha256: string | null
}

export type KeptUrgent = KeptFiling | KeptPhoto
