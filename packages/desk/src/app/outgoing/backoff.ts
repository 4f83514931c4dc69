/** When a message that was not taken is tried again: 1, 2, 4 … minutes later, an hour at most; after a day it has failed. */
const FIRST_MS = 60_000
const LONGEST_MS = 3_600_000
export const mostAttempts = 30

/** @returns null where it was tried often enough */
export function nextTryMs(attempts: number, nowMs: number): number | null {
  if (attempts >= mostAttempts) return null
  return nowMs + Math.min(LONGEST_MS, FIRST_MS * 2 ** (attempts - 1))
}
