/** Who did what, newest first. Names are looked up now: a forgotten person has none. */
import type { AuditAsk, AuditTrail } from '@gaugewright/contract'
import { ownerAtTheDesk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'

export async function auditTrail({ access }: Pick<Ports, 'access'>, ask: AuditAsk): Promise<Answer<AuditTrail>> {
  const { before: beforeId, limit, personId } = ask
  const found = await access.audit({ beforeId, personId, limit: limit + 1 })
  const nameOf = new Map((await access.people()).map(({ id, name }) => [id, name]))
  nameOf.set(ownerAtTheDesk.personId, ownerAtTheDesk.name)
  const entries = found.slice(0, limit).map((entry) => ({ ...entry, name: nameOf.get(entry.personId ?? '') ?? null }))
  return answered({ entries, more: found.length > limit })
}
