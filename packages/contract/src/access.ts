/** Who may do what at the desk: people, their roles, signing in, and the trail of what was done. JSON on the wire. */
import { z } from 'zod'

/**
 * From least to most. An observer sees and files what belongs to their own gauges; a viewer sees the desk; a colleague
 * decides and sends too; a coordinator also sets rules and looks after people. Each role may do what those before it may,
 * but an observer's own pages are asked with one's own gauges, whatever the role.
 */
export const roles = ['observer', 'viewer', 'colleague', 'coordinator'] as const
export const roleSchema = z.enum(roles)
export type Role = z.infer<typeof roleSchema>

/** @returns whether somebody of `role` may do what `needed` may */
export function isAtLeast(role: Role, needed: Role): boolean {
  return roles.indexOf(role) >= roles.indexOf(needed)
}

/** Whoever a request comes from. `gauges`: ids of the gauges that the person reads. */
export const actorSchema = z.object({
  personId: z.string(),
  role: roleSchema,
  name: z.string(),
  gauges: z.array(z.string()),
})
export type Actor = z.infer<typeof actorSchema>

/** The person at the computer itself, while nobody has a password. */
export const ownerAtTheDesk: Actor = { personId: 'owner', role: 'coordinator', name: 'coordinator', gauges: [] }

export const personSchema = z.object({
  id: z.string(),
  name: z.string(),
  role: roleSchema,
  /** Lower case; null where the person cannot be written to. */
  mail: z.string().nullable(),
  /** For text messages, with its country code. */
  phone: z.string().nullable(),
  language: z.enum(['en', 'es']),
  /** Ids of the gauges that the person reads. */
  gauges: z.array(z.string()),
  addedAtUtc: z.string(),
  hasPassword: z.boolean(),
  /** To the day; null before the first sign-in. */
  lastSeenOn: z.string().nullable(),
})
export type Person = z.infer<typeof personSchema>

/** Who asks. `actor` is null where nobody has signed in; `isOpen` while the desk asks nobody to. */
export const whoSchema = z.object({ actor: actorSchema.nullable(), isOpen: z.boolean() })
export type Who = z.infer<typeof whoSchema>

const mail = z
  .string()
  .trim()
  .max(254)
  .toLowerCase()
  .pipe(z.email({ message: 'not a mail address' }))

export const phoneSchema = z
  .string()
  .trim()
  .regex(/^\+[1-9]\d{6,14}$/, 'a number with its country code, such as +15550100123')

export const passwordSchema = z.string().min(12, 'at least 12 characters').max(128, 'at most 128 characters')

export const signInAskSchema = z.object({ mail, password: z.string().min(1).max(128) })
export const askLinkAskSchema = z.object({ mail })
/** Told alike whether the address is known or not. */
export const linkAskedSchema = z.object({ minutes: z.number().int() })
export const useLinkAskSchema = z.object({ link: z.string().min(1).max(200) })
export const signedOutSchema = z.object({ signedOut: z.literal(true) })

export const peopleSchema = z.object({ people: z.array(personSchema) })
export const addPersonAskSchema = z.object({
  name: z.string().trim().min(1).max(120),
  role: roleSchema,
  mail: mail.nullable().default(null),
  language: z.enum(['en', 'es']).default('en'),
  /** Ids or codes of gauges. */
  gauges: z.array(z.string().max(100)).max(50).default([]),
})
export const setRoleAskSchema = z.object({
  personId: z.string().max(100),
  role: roleSchema,
  /** Ids or codes of gauges, in place of those that the person reads now; as they are where left out. */
  gauges: z.array(z.string().max(100)).max(50).optional(),
})
/** What is left out stays as it is. */
export const changePersonAskSchema = z.object({
  personId: z.string().max(100),
  name: z.string().trim().min(1).max(120).optional(),
  mail: mail.nullable().optional(),
  language: z.enum(['en', 'es']).optional(),
  phone: phoneSchema.nullable().optional(),
})
export const setPasswordAskSchema = z.object({
  personId: z.string().max(100),
  password: passwordSchema,
  /** Of the one who asks: anybody may be sitting at an open screen. Not needed while the desk asks nobody to sign in. */
  ownPassword: z.string().max(128).optional(),
})
export const personAskSchema = z.object({ personId: z.string().max(100) })

/** One thing that was done. Names are looked up when read, so that a forgotten person leaves no name behind. */
export const auditEntrySchema = z.object({
  id: z.string(),
  atUtc: z.string(),
  /** Null where it was done by no person that is known: a refused sign-in, the command line, a sender's key. */
  personId: z.string().nullable(),
  /** Of the person; else where it came from. Null where the person was forgotten. */
  name: z.string().nullable(),
  door: z.enum(['desk', 'command line', 'rule']),
  /** The use case, e.g. `decide`, `signIn`, `setRule`. */
  act: z.string(),
  /** What it was done to: the id of a reading, a person, a decision. */
  subject: z.string().nullable(),
  result: z.enum(['done', 'refused']),
})
export type AuditEntry = z.infer<typeof auditEntrySchema>

export const auditAskSchema = z.object({
  /** Only entries before this one (its id). */
  before: z.string().max(100).optional(),
  limit: z.coerce.number().int().min(1).max(1000).default(100),
  personId: z.string().max(100).optional(),
})
export const auditTrailSchema = z.object({ entries: z.array(auditEntrySchema), more: z.boolean() })

/** Everything held on one person: JSON that a person can read, with a section for each place it is kept in. */
export const personExportSchema = z.object({
  madeAtUtc: z.string(),
  person: personSchema,
  sections: z.record(z.string(), z.array(z.unknown())),
})

export type SignInAsk = z.infer<typeof signInAskSchema>
export type AskLinkAsk = z.infer<typeof askLinkAskSchema>
export type LinkAsked = z.infer<typeof linkAskedSchema>
export type UseLinkAsk = z.infer<typeof useLinkAskSchema>
export type SignedOut = z.infer<typeof signedOutSchema>
export type People = z.infer<typeof peopleSchema>
export type AddPersonAsk = z.infer<typeof addPersonAskSchema>
export type SetRoleAsk = z.infer<typeof setRoleAskSchema>
export type ChangePersonAsk = z.infer<typeof changePersonAskSchema>
export type SetPasswordAsk = z.infer<typeof setPasswordAskSchema>
export type PersonAsk = z.infer<typeof personAskSchema>
export type AuditAsk = z.infer<typeof auditAskSchema>
export type AuditTrail = z.infer<typeof auditTrailSchema>
export type PersonExport = z.infer<typeof personExportSchema>
