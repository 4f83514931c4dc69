/** Who does something, and the line that is written about it in the trail. */
import type { Actor } from '@gaugewright/contract'
import { ownerAtTheDesk } from '@gaugewright/contract'
import type { Decision } from '@gaugewright/science'
import type { StoredAuditEntry } from '../../ports/access.ts'
import type { Ports } from '../../ports/ports.ts'

/** A person at the desk, or whoever sits at the computer and uses the command line. */
export interface Doer {
  personId: string | null
  door: StoredAuditEntry['door']
}

export const atTheCommandLine: Doer = { personId: null, door: 'command line' }

export function doerFrom(actor: Actor): Doer {
  return { personId: actor.personId, door: 'desk' }
}

/** How a decision or a setting names who made it. `asked`: the name given by the owner, while nobody signs in. */
export function namedBy(actor: Actor, asked: string): { by: string; byPersonId?: string } {
  if (actor.personId === ownerAtTheDesk.personId) return { by: asked }
  return { by: actor.name, byPersonId: actor.personId }
}

/** The person in a decision. */
export function personFrom({ by, byPersonId }: { by: string; byPersonId?: string }): Decision['by'] {
  return { kind: 'person', name: by, ...(byPersonId !== undefined && { personId: byPersonId }) }
}

export async function writeTrail(
  ports: Pick<Ports, 'access' | 'clock' | 'newId'>,
  doer: Doer,
  what: { act: string; subject: string | null; result?: StoredAuditEntry['result'] },
): Promise<void> {
  const entry = { id: ports.newId(), atUtc: ports.clock.nowUtc(), result: 'done' as const, ...doer, ...what }
  await ports.access.appendAudit(entry)
}
