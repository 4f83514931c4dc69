/** Messages on their way out, and how mail and reminders are set. JSON on the wire; instants RFC 3339 in UTC. */
import { z } from 'zod'
import { phoneSchema } from './access.ts'

const clockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a 24-hour local time such as 10:00')
const mailAddress = z
  .string()
  .trim()
  .max(254)
  .pipe(z.email({ message: 'not a mail address' }))

export const outgoingKinds = ['mail', 'webhook', 'file'] as const
/** `in doubt`: it went out, and whether it was taken is not known; a person decides. */
export const outgoingStates = ['waiting', 'sending', 'sent', 'failed', 'in doubt', 'discarded'] as const

/** One message, without its text. */
export const outgoingRowSchema = z.object({
  id: z.string(),
  purpose: z.string(),
  kind: z.enum(outgoingKinds),
  /** A mail address, a webhook's address or a folder; empty where the recipient was erased. */
  recipient: z.string(),
  /** Subject of a mail, name of a file; empty for a webhook. */
  subject: z.string(),
  state: z.enum(outgoingStates),
  attempts: z.number().int(),
  lastError: z.string().nullable(),
  by: z.string(),
  queuedAtUtc: z.string(),
  changedAtUtc: z.string(),
  /** No earlier than this it is tried again; null unless it waits. */
  nextTryAtUtc: z.string().nullable(),
  notAfterUtc: z.string().nullable(),
  /** What a person may do with it now. */
  may: z.array(z.enum(['retry', 'discard', 'restore'])),
})

/** Whether messages of a kind can go out now; if not, why, in a code of docs/errors.md. */
export const carrierStateSchema = z.object({ isReady: z.boolean(), code: z.string().nullable() })

export const outboxSchema = z.object({
  counts: z.record(z.enum(outgoingStates), z.number().int()),
  carriers: z.object({ mail: carrierStateSchema, webhook: carrierStateSchema, file: carrierStateSchema }),
  /** Newest first: those that need somebody (waiting, failed, in doubt), or those of the state asked for. */
  rows: z.array(outgoingRowSchema),
})

export const readOutboxAskSchema = z.object({
  state: z.enum(outgoingStates).optional(),
  limit: z.coerce.number().int().min(1).max(500).default(50),
})

/** `restore` takes a discarding back. */
export const settleOutgoingAskSchema = z.object({
  id: z.string().max(100),
  act: z.enum(['retry', 'discard', 'restore']),
  by: z.string().max(200).default('coordinator'),
})

/** How mail goes out. The password of `user` is never kept here: the desk reads it from its environment. */
export const mailSettingsSchema = z.object({
  host: z.string().trim().min(1).max(253),
  port: z.number().int().min(1).max(65_535),
  /** TLS from the start, or after STARTTLS, or none (only to a mail server on this computer). */
  security: z.enum(['tls', 'starttls', 'none']),
  user: z.string().trim().min(1).max(254).nullable().default(null),
  from: mailAddress,
  fromName: z.string().trim().max(120).default(''),
})

export const reminderSettingsSchema = z.object({
  isOn: z.boolean(),
  /** Local time of the network: those who have not read by then get one kind note. */
  atTime: clockTime,
  /** Where people reach the desk; the links in a note begin with it. */
  deskUrl: z
    .url({ protocol: /^https?$/, message: 'an address such as https://desk.example.org' })
    .max(300)
    .nullable(),
  /** A service that sends text messages takes them here; null where there is none. */
  textUrl: z
    .url({ protocol: /^https?$/, message: 'an address such as https://text.example.org/send' })
    .max(500)
    .nullable(),
})

const setBy = { by: z.string(), setAtUtc: z.string() }

export const outgoingSettingsSchema = z.object({
  mail: z.object({ settings: mailSettingsSchema, ...setBy }).nullable(),
  reminders: z.object({ settings: reminderSettingsSchema, ...setBy }).nullable(),
  carriers: outboxSchema.shape.carriers,
  /** The network's reading hour, which the hour of reminders must lie after. */
  readingTime: clockTime,
  timeZone: z.string(),
})

const asker = { by: z.string().max(200).default('coordinator') }
/** Null takes the mail settings away: then messages wait. */
export const setMailAskSchema = z.object({ settings: mailSettingsSchema.nullable(), ...asker })
export const setRemindersAskSchema = z.object({ settings: reminderSettingsSchema, ...asker })
export const sendTestMailAskSchema = z.object({ to: mailAddress, ...asker })
export const queuedMailSchema = z.object({ id: z.string() })

export const leftOutReasons = ['read', 'away', 'total open', 'stopped', 'reminded already', 'no address'] as const

/** Who would be reminded now, or was: by name, with the gauges not read; and who is left out, and why. */
export const remindedSchema = z.object({
  day: z.iso.date(),
  /** False where this was only a look. */
  isQueued: z.boolean(),
  remind: z.array(
    z.object({
      personId: z.string(),
      name: z.string(),
      way: z.enum(['mail', 'text']),
      to: z.string(),
      language: z.enum(['en', 'es']),
      gauges: z.array(z.string()),
    }),
  ),
  leftOut: z.array(z.object({ personId: z.string(), name: z.string(), why: z.enum(leftOutReasons) })),
})

/** Whether and how a person wants to be reminded. */
export const chooseRemindersAskSchema = z.object({
  personId: z.string().max(100),
  wants: z.boolean(),
  way: z.enum(['mail', 'text']).default('mail'),
  /** With its country code, for text messages. */
  phone: phoneSchema.nullable().default(null),
  ...asker,
})
export const reminderChoiceSchema = chooseRemindersAskSchema.omit({ by: true })

export type OutgoingRow = z.infer<typeof outgoingRowSchema>
export type CarrierState = z.infer<typeof carrierStateSchema>
export type OutboxAnswer = z.infer<typeof outboxSchema>
export type ReadOutboxAsk = z.infer<typeof readOutboxAskSchema>
export type SettleOutgoingAsk = z.infer<typeof settleOutgoingAskSchema>
export type MailSettings = z.infer<typeof mailSettingsSchema>
export type ReminderSettings = z.infer<typeof reminderSettingsSchema>
export type OutgoingSettings = z.infer<typeof outgoingSettingsSchema>
export type SetMailAsk = z.infer<typeof setMailAskSchema>
export type SetRemindersAsk = z.infer<typeof setRemindersAskSchema>
export type SendTestMailAsk = z.infer<typeof sendTestMailAskSchema>
export type QueuedMail = z.infer<typeof queuedMailSchema>
export type LeftOutReason = (typeof leftOutReasons)[number]
export type Reminded = z.infer<typeof remindedSchema>
export type ChooseRemindersAsk = z.infer<typeof chooseRemindersAskSchema>
export type ReminderChoice = z.infer<typeof reminderChoiceSchema>
