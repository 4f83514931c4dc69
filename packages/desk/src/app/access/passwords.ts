/**
 * Passwords by Argon2id (RFC 9106) with 19 MiB, two passes, one lane: the least that OWASP's cheat sheet names. A check
 * costs the same whether or not the person exists or has a password, so that time tells nobody who is known here.
 */
import { hash, verify } from '@node-rs/argon2'

/** 2 is Argon2id. */
const costs = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 }

export async function hashPassword(password: string): Promise<string> {
  return await hash(sameText(password), costs)
}

/** Of a password that nobody knows: what is checked where there is nothing to check. */
let nobodysHash: Promise<string> | null = null

/** @param kept  null where the person is unknown or has no password: as much work, and never right */
export async function isPassword(kept: string | null, password: string): Promise<boolean> {
  nobodysHash ??= hashPassword(crypto.randomUUID())
  const nobodys = await nobodysHash
  const fits = await verify(kept ?? nobodys, sameText(password))
  return fits && kept !== null
}

/** The same letters typed on another keyboard may come as other characters (Unicode, NFKC). */
function sameText(password: string): string {
  return password.normalize('NFKC')
}
