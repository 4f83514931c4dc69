/** Everybody who may come in, by name. */
import type { People } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { wirePeople } from './access/wirePeople.ts'
import { type Answer, answered } from './answer.ts'

export async function listPeople(
  ports: Pick<Ports, 'access' | 'ledger' | 'outgoingSettings'>,
): Promise<Answer<People>> {
  return answered(await wirePeople(ports))
}
