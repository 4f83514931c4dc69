/** What the outbox says, as texts: pure. */
import type { MailSettings, OutboxAnswer, OutgoingRow, Reminded } from '@gaugewright/contract'
import { fill } from '../../words/fill.ts'
import type { Words } from '../../words/messages.ts'

type Own = Words['outgoing']

/** What keeps messages from going out. A missing secret matters only where a webhook waits or is set. */
export function troublesOf(outbox: OutboxAnswer, hasTextUrl: boolean, own: Own): string[] {
  const { mail, webhook } = outbox.carriers
  const callWaits = hasTextUrl || outbox.rows.some(({ kind, state }) => kind === 'webhook' && state === 'waiting')
  const codes = [mail.code, callWaits ? webhook.code : null]
  return codes.flatMap((code) => (code === null ? [] : [own.trouble[code as keyof Own['trouble']] ?? code]))
}

/** What is still missing of the way by which mail goes out, the topmost field first; null when it can be set. */
export function mailGap({ host, port, from }: MailSettings, own: Own): string | null {
  if (host.trim() === '') return own.needHost
  if (port < 1 || port > 65_535) return own.needPort
  return /^\S+@\S+\.\S+$/.test(from) ? null : own.needFrom
}

export function purposeOf({ purpose }: Pick<OutgoingRow, 'purpose'>, own: Own): string {
  return own.purposes[purpose as keyof Own['purposes']] ?? purpose
}

export function recipientOf({ recipient }: Pick<OutgoingRow, 'recipient'>, own: Own): string {
  return recipient === '' ? own.erased : recipient
}

/** Who would be reminded, and how many are left out for each reason, in the order of the words. */
export function whomText({ remind, leftOut }: Reminded, own: Own): string {
  const names = remind.map(({ name }) => name).join(', ')
  const first = remind.length === 0 ? own.whomNobody : fill(own.whom, { count: remind.length, names })
  const reasons = Object.entries(own.leftOutOf).flatMap(([why, text]) => {
    const count = leftOut.filter((one) => one.why === why).length
    return count === 0 ? [] : [fill(text, { count })]
  })
  return reasons.length === 0 ? first : `${first} ${fill(own.leftOut, { list: reasons.join(', ') })}`
}
