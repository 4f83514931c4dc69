/** Looks for the number that shows that a page, and no flood of them, sends an offer: SHA-256 with leading zero bits. */
import { sha256 } from '@noble/hashes/sha2.js'
import { utf8ToBytes } from '@noble/hashes/utils.js'

const scope = self as unknown as {
  onmessage: ((event: MessageEvent<{ ticket: string; zeroBits: number }>) => void) | null
  postMessage: (nonce: string) => void
}

scope.onmessage = ({ data: { ticket, zeroBits } }) => {
  for (let nonce = 0; ; nonce++) {
    const digest = sha256(utf8ToBytes(`${ticket}.${nonce}`))
    const first = ((digest[0]! << 24) | (digest[1]! << 16) | (digest[2]! << 8) | digest[3]!) >>> 0
    if (zeroBits === 0 || first >>> (32 - zeroBits) === 0) return scope.postMessage(String(nonce))
  }
}
