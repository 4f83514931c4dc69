/**
 * What the desk does by itself about reminders: from the hour that is set until the end of the local date, whoever has not
 * read and was not reminded is reminded. After a stop it catches up for today alone: what the hour of an earlier day missed
 * stays missed. Settings made after today's hour begin tomorrow.
 */
import type { Reminded } from '@gaugewright/contract'
import { type RemindPorts, remind } from '../remind.ts'
import { reminderHour } from './reminderHour.ts'

/** @returns null where nothing was due; else who was reminded just now */
export async function remindWhenDue(ports: RemindPorts): Promise<Reminded | null> {
  const network = (await ports.ledger.networks())[0]
  const set = network === undefined ? null : await ports.outgoingSettings.reminders(network.id)
  if (network === undefined || set === null || !set.settings.isOn || set.settings.deskUrl === null) return null
  const nowMs = Date.parse(ports.clock.nowUtc())
  const hour = reminderHour(network, set.settings.atTime, nowMs)
  if (hour === null || nowMs < hour.dueMs || Date.parse(set.setAtUtc) > hour.dueMs) return null
  const answer = await remind(ports, { isLook: false, by: 'rule' })
  return answer.ok && answer.value.remind.length > 0 ? answer.value : null
}
