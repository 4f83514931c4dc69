/** Keys of senders: 256 random bits behind a word that says what they are; only their digest is kept. */
import { createHash, randomBytes } from 'node:crypto'
import type { Key } from '@gaugewright/contract'
import type { SenderKey } from '../../ports/senders.ts'

const START_LENGTH = 10

export function freshSecret(): string {
  return `gauge_${randomBytes(32).toString('base64url')}`
}

export function startOf(secret: string): string {
  return secret.slice(0, START_LENGTH)
}

/** SHA-256 is enough for a secret that nobody can guess: it needs no slow digest. */
export function digestOf(text: string | Uint8Array): string {
  return createHash('sha256').update(text).digest('hex')
}

export function wireKey({ keyHash: _, ...key }: SenderKey): Key {
  return { ...key, scopes: [...key.scopes] }
}
