/** What is sent next, and what an answer of the desk means for what was sent. */
import type { KeptUrgent } from './keptUrgent.ts'

/** Words that may save somebody go first: every waiting filing in the order of making, then the photos. */
export function sendingOrder(kept: readonly KeptUrgent[]): KeptUrgent[] {
  const waiting = kept.filter(({ state }) => state === 'waiting').sort((one, other) => one.seq - other.seq)
  return [...waiting.filter(({ what }) => what === 'filing'), ...waiting.filter(({ what }) => what === 'photo')]
}

/** `later`: not the report's fault, it stays and is tried again. `refused`: it will never be taken as it is. */
export function meaningOf(code: string): 'later' | 'sign in' | 'refused' {
  if (passing.has(code)) return 'later'
  return signInWanted.has(code) ? 'sign in' : 'refused'
}

const passing = new Set([
  'DESK_UNREACHABLE',
  'DESK_ANSWER_UNREADABLE',
  'DESK_FAILED',
  'LEDGER_BUSY',
  'LEDGER_CANNOT_WRITE',
  'PHOTO_STORE_FULL',
  'TOO_OFTEN',
])
const signInWanted = new Set(['SIGN_IN_NEEDED'])
