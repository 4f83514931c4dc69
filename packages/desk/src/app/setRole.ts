/** Give a person another role, or other gauges. Sessions end, so that nobody keeps what was taken from them. */
import type { People, SetRoleAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { findPerson } from './access/findPerson.ts'
import { gaugeIds } from './access/gaugeIds.ts'
import { lastCoordinatorProblem } from './access/lastCoordinator.ts'
import { wirePeople } from './access/wirePeople.ts'
import { type Answer, answered } from './answer.ts'

export async function setRole(
  ports: Pick<Ports, 'access' | 'ledger' | 'outgoingSettings' | 'clock' | 'newId'>,
  ask: SetRoleAsk,
  doer: Doer,
): Promise<Answer<People>> {
  const found = await findPerson(ports, ask.personId)
  if (!found.ok) return found
  const person = found.value
  const gauges = ask.gauges === undefined ? answered([...person.gauges]) : await gaugeIds(ports, ask.gauges)
  if (!gauges.ok) return gauges
  if (ask.role !== 'coordinator') {
    const problem = await lastCoordinatorProblem(ports, person.id)
    if (problem !== null) return problem
  }
  await ports.access.savePerson({ ...person, role: ask.role, gauges: gauges.value })
  if (ask.role !== person.role) await ports.access.endSessionsOf(person.id)
  await writeTrail(ports, doer, { act: 'setRole', subject: person.id })
  return answered(await wirePeople(ports))
}
