/** Before the desk is opened to other computers somebody must be able to sign in: the owner, asked for at the terminal. */
import { addPersonAskSchema, setPasswordAskSchema } from '@gaugewright/contract'
import { atTheCommandLine } from '../app/access/doer.ts'
import { addPerson } from '../app/addPerson.ts'
import { refused } from '../app/answer.ts'
import { setPassword } from '../app/setPassword.ts'
import type { Ports } from '../ports/ports.ts'
import { CommandStopped, valueFrom } from './commandStopped.ts'
import type { World } from './world.ts'

/** @throws {CommandStopped} HOST_NEEDS_PASSWORD where nobody can be asked, or what was typed does not do */
export async function ownerFirst(world: World, ports: Ports, host: string): Promise<void> {
  if (await ports.access.hasAnyPassword()) return
  if (!world.out.isTerminal) throw needsPassword(host)
  await world.out.write(
    `Other computers will reach the desk at ${host}: from now on it asks everybody to sign in, you as its owner first.\n`,
  )
  const name = await world.askLine('Your name: ')
  const mail = await world.askLine('Your mail address: ')
  const password = await world.askSecret('A password of at least 12 characters: ')
  const person = addPersonAskSchema.safeParse({ name, mail, role: 'coordinator' })
  const chosen = setPasswordAskSchema.safeParse({ personId: mail ?? '', password })
  if (!person.success || person.data.mail === null || !chosen.success) throw needsPassword(host)
  const known = await ports.access.personByMail(person.data.mail)
  if (known === null) valueFrom(await addPerson(ports, person.data, atTheCommandLine))
  valueFrom(await setPassword(ports, { ...chosen.data, personId: person.data.mail }, null, atTheCommandLine))
}

function needsPassword(host: string): CommandStopped {
  const advice =
    'Add yourself: gaugewright people add NAME --role coordinator --mail ADDRESS, then gaugewright people password NAME.'
  return new CommandStopped(
    refused('HOST_NEEDS_PASSWORD', `${host} reaches other computers, and nobody has a password`, advice).problem,
  )
}
