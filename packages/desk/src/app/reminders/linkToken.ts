/** The signed part of the link by which a person stops reminders: made and checked by the desk alone, good for ever. */
import { createHmac, timingSafeEqual } from 'node:crypto'

/** @param secret  of the network, from the store */
export function linkToken(secret: string, networkId: string, personId: string): string {
  return `${Buffer.from(personId).toString('base64url')}.${signature(secret, networkId, personId).toString('base64url')}`
}

/** @returns the person's id, or null where the token was not made with this secret */
export function personOfToken(secret: string, networkId: string, token: string): string | null {
  const [idText = '', signatureText = '', ...more] = token.split('.')
  const personId = Buffer.from(idText, 'base64url').toString()
  const given = Buffer.from(signatureText, 'base64url')
  const own = signature(secret, networkId, personId)
  if (more.length > 0 || given.length !== own.length || !timingSafeEqual(given, own)) return null
  return personId
}

function signature(secret: string, networkId: string, personId: string): Buffer {
  return createHmac('sha256', secret)
    .update(JSON.stringify(['stop reminders', networkId, personId]))
    .digest()
}
