/** Keys of those who send and read by machine: made by a coordinator, shown once, revoked at any time. */
import { z } from 'zod'

/** `send`: readings. `read`: network, gauges, roll, findings, the accepted record. `urgent`: urgent reports. */
export const keyScopes = ['send', 'read', 'urgent'] as const
export const keyScopeSchema = z.enum(keyScopes)
export type KeyScope = z.infer<typeof keyScopeSchema>

export const keySchema = z.object({
  id: z.string(),
  sender: z.string(),
  scopes: z.array(keyScopeSchema),
  /** First characters of the key, to tell keys apart. */
  start: z.string(),
  madeAtUtc: z.string(),
  madeBy: z.string(),
  revokedAtUtc: z.string().nullable(),
  /** To the day; null before its first use. */
  lastUsedOn: z.string().nullable(),
})
export type Key = z.infer<typeof keySchema>

export const keysSchema = z.object({ keys: z.array(keySchema) })
export type Keys = z.infer<typeof keysSchema>

export const addKeyAskSchema = z.object({
  sender: z.string().trim().min(1).max(80),
  scopes: z.array(keyScopeSchema).min(1).max(keyScopes.length),
})
export type AddKeyAsk = z.infer<typeof addKeyAskSchema>

/** `secret` is told this once: the desk keeps its digest alone. */
export const keyMadeSchema = z.object({ key: keySchema, secret: z.string() })
export type KeyMade = z.infer<typeof keyMadeSchema>

export const revokeKeyAskSchema = z.object({ id: z.string().min(1).max(100) })
export type RevokeKeyAsk = z.infer<typeof revokeKeyAskSchema>
