/** Secrets that are given out, and the digests that are kept of them: whoever reads the ledger file can use none. */
import { createHash, randomBytes } from 'node:crypto'

/** 256 random bits as text for a cookie or a link. */
export function newSecret(): string {
  return randomBytes(32).toString('base64url')
}

/** SHA-256 in hexadecimal. A plain digest is enough for a secret of 256 random bits; passwords are another matter. */
export function digestOf(secret: string): string {
  return createHash('sha256').update(secret).digest('hex')
}
