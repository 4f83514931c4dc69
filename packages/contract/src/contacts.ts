/** What was exchanged with a person: letters, calls, visits, mails, notes. JSON on the wire. */
import { z } from 'zod'

export const contactWays = ['letter', 'call', 'visit', 'mail received', 'note'] as const
export const contactWaySchema = z.enum(contactWays)
export type ContactWay = z.infer<typeof contactWaySchema>

/** About whom: `candidate ID` or `person ID`. Both are shown as one once they are one. */
export const aboutPersonSchema = z.string().regex(/^(candidate|person) \S{1,100}$/, 'candidate ID or person ID')

export const contactSchema = z.object({
  id: z.string(),
  way: contactWaySchema,
  /** Of a letter its subject, of others what was said. */
  text: z.string(),
  atUtc: z.string(),
  by: z.string(),
  isTakenBack: z.boolean(),
  /** How a message of the outbox stands; null for what people did. */
  outgoing: z.object({ id: z.string(), state: z.string(), error: z.string().nullable() }).nullable(),
})
export type Contact = z.infer<typeof contactSchema>

export const contactsAskSchema = z.object({ about: aboutPersonSchema })
export const contactsSchema = z.object({ about: z.string(), contacts: z.array(contactSchema) })
export const addContactAskSchema = z.object({
  about: aboutPersonSchema,
  id: z.string().min(1).max(100).optional(),
  way: contactWaySchema.exclude(['letter']),
  text: z.string().trim().min(1, 'a word about it').max(4000),
})
export const withdrawContactAskSchema = z.object({
  about: aboutPersonSchema,
  contactId: z.string().min(1).max(100),
  /** Put it back instead. */
  undo: z.boolean().default(false),
})
export type ContactsAsk = z.infer<typeof contactsAskSchema>
export type Contacts = z.infer<typeof contactsSchema>
export type AddContactAsk = z.infer<typeof addContactAskSchema>
export type WithdrawContactAsk = z.infer<typeof withdrawContactAskSchema>
