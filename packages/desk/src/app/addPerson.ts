/** Add a person: an observer signs in by mailed links, the others once they have a password. */
import type { AddPersonAsk, People } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { gaugeIds } from './access/gaugeIds.ts'
import { wirePeople } from './access/wirePeople.ts'
import { type Answer, answered, refused } from './answer.ts'

export async function addPerson(
  ports: Pick<Ports, 'access' | 'ledger' | 'outgoingSettings' | 'clock' | 'newId'>,
  ask: AddPersonAsk,
  doer: Doer,
): Promise<Answer<People>> {
  const { name, role, mail, language } = ask
  const gauges = await gaugeIds(ports, ask.gauges)
  if (!gauges.ok) return gauges
  if (mail !== null && (await ports.access.personByMail(mail)) !== null) {
    return refused('MAIL_TAKEN', 'another person has this mail address', 'Give each person an address of their own.')
  }
  const id = ports.newId()
  await ports.access.savePerson({
    id,
    name,
    role,
    mail,
    language,
    gauges: gauges.value,
    addedAtUtc: ports.clock.nowUtc(),
  })
  await writeTrail(ports, doer, { act: 'addPerson', subject: id })
  return answered(await wirePeople(ports))
}
