/** UUID version 7 (RFC 9562, 5.7): sortable by the millisecond of its making, and within it by a counter. */
import { randomBytes } from 'node:crypto'

let lastMs = 0
let counter = 0
/** Random bytes are drawn for a thousand ids at a time: an import makes a million. */
let pool = Buffer.alloc(0)
let poolUsed = 0

export function newUuidV7(nowMs: number = Date.now()): string {
  if (nowMs > lastMs) {
    lastMs = nowMs
    // A 12-bit counter that starts low, so that many ids of one millisecond still rise.
    counter = nextRandom(1)[0] ?? 0
  } else {
    counter++
    if (counter > 0xfff) {
      lastMs++
      counter = 0
    }
  }
  const time = lastMs.toString(16).padStart(12, '0')
  const tail = nextRandom(8)
  tail[0] = ((tail[0] ?? 0) & 0x3f) | 0x80
  const hex = tail.toString('hex')
  const middle = `7${counter.toString(16).padStart(3, '0')}`
  return `${time.slice(0, 8)}-${time.slice(8)}-${middle}-${hex.slice(0, 4)}-${hex.slice(4)}`
}

function nextRandom(count: number): Buffer {
  if (poolUsed + count > pool.length) {
    pool = randomBytes(8192)
    poolUsed = 0
  }
  poolUsed += count
  return pool.subarray(poolUsed - count, poolUsed)
}
