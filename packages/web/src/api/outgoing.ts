/** Mail, reminders and the outbox: read, set, settled. Every function throws a ProblemError. */
import type {
  OutboxAnswer,
  OutgoingRow,
  OutgoingSettings,
  QueuedMail,
  Reminded,
  SendTestMailAsk,
  SetMailAsk,
  SetRemindersAsk,
  SettleOutgoingAsk,
} from '@gaugewright/contract'
import { routes } from '@gaugewright/contract'
import { queryOptions } from '@tanstack/react-query'
import { askDesk } from './askDesk.ts'

const LOOK_MS = 5000

export const outboxKey = ['outbox'] as const
export const outgoingSettingsKey = ['outgoingSettings'] as const

/** The desk sends while it is open: the list follows. */
export const outboxQuery = queryOptions({
  queryKey: outboxKey,
  queryFn: ({ signal }) => askDesk<OutboxAnswer>(`${routes.readOutbox.path}?limit=20`, undefined, signal),
  refetchInterval: LOOK_MS,
})

export const outgoingSettingsQuery = queryOptions({
  queryKey: outgoingSettingsKey,
  queryFn: ({ signal }) => askDesk<OutgoingSettings>(routes.readOutgoingSettings.path, undefined, signal),
})

export const remindedQuery = queryOptions({
  queryKey: ['reminders'] as const,
  queryFn: ({ signal }) => askDesk<Reminded>(routes.remind.path, undefined, signal),
  retry: false,
})

export const postSettle = (ask: SettleOutgoingAsk): Promise<OutgoingRow> => askDesk(routes.settleOutgoing.path, ask)
export const postMail = (ask: SetMailAsk): Promise<OutgoingSettings> => askDesk(routes.setMail.path, ask)
export const postReminders = (ask: SetRemindersAsk): Promise<OutgoingSettings> => askDesk(routes.setReminders.path, ask)
export const postTestMail = (ask: SendTestMailAsk): Promise<QueuedMail> => askDesk(routes.sendTestMail.path, ask)
